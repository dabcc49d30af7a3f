import { freeze } from 'immer';
import type { Project } from '../core/project.ts';
import type { Edit } from './edits/edit.ts';
import {
  type Change,
  gestureEnded,
  type History,
  historyFrom,
  record,
  redo,
  undo,
} from './history.ts';

/** The open project with its history. The functions need no `this` and can be handed on alone. */
export type Store = {
  /** The project as it is now, frozen: the very same object until something changes. */
  readonly snapshot: () => Project;
  /** Calls `listener` after every change of the project; gives the function that ends it. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Applies an edit as one undoable change. An edit that returns its argument does nothing at all. */
  readonly edit: (edit: Edit, change: Change) => void;
  /** Ends the gesture that the last edit was a part of: what comes next is undone by itself. */
  readonly endGesture: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Name of the change that undo would take back; undefined where there is none. */
  readonly undoLabel: () => string | undefined;
  /** Name of the change that redo would bring back; undefined where there is none. */
  readonly redoLabel: () => string | undefined;
  /** Opens another project; nothing of the one before can be undone into it. */
  readonly replace: (project: Project) => void;
};

/** A store that holds `project`, with nothing to undo yet. */
export function createStore(project: Project): Store {
  let history: History<Project> = historyFrom(freeze(project, true));
  const listeners = new Set<() => void>();

  function moveTo(next: History<Project>): void {
    if (next === history) return;
    history = next;
    for (const listener of listeners) listener();
  }

  return {
    snapshot: () => history.present,
    subscribe: (listener) => {
      // A function of its own, so that one listener that subscribes twice is called twice.
      const entry = () => listener();
      listeners.add(entry);
      return () => listeners.delete(entry);
    },
    edit: (edit, change) => moveTo(record(history, freeze(edit(history.present), true), change)),
    endGesture: () => {
      history = gestureEnded(history);
    },
    undo: () => moveTo(undo(history)),
    redo: () => moveTo(redo(history)),
    undoLabel: () => history.past.at(-1)?.label,
    redoLabel: () => history.future.at(-1)?.label,
    replace: (next) => moveTo(historyFrom(freeze(next, true))),
  };
}
