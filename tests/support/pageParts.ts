import type { Playback, PlaybackState } from '../../src/app/playback.ts';
import type { PlayRequest } from '../../src/app/score.ts';
import type { Project } from '../../src/core/project.ts';
import type { ShelfPattern } from '../../src/core/rhythm/shelf.ts';
import { createStore } from '../../src/state/store.ts';
import type { Parts } from '../../src/ui/parts.ts';
import { createViewStore, type ViewChange } from '../../src/ui/viewState.ts';

/** A playback without sound: it is stopped or plays what was asked for, at no position. */
function silentPlayback(): Playback {
  let state: PlaybackState = { status: 'stopped' };
  const listeners = new Set<() => void>();
  const show = (next: PlaybackState) => {
    state = next;
    for (const listener of listeners) listener();
  };
  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    play: async (request: PlayRequest) => show({ status: 'playing', request, bpm: 80 }),
    stop: () => show({ status: 'stopped' }),
    position: () => undefined,
    changeRung: () => undefined,
    goToRung: () => undefined,
    setVolumes: () => undefined,
    setSpeed: () => undefined,
    dismiss: () => undefined,
  };
}

/** The parts that a page needs, for a project and a view, with a playback that makes no sound and nothing kept. */
export function pageParts(
  project: Project,
  view: ViewChange = {},
  shelf: readonly ShelfPattern[] = [],
): Parts {
  const views = createViewStore({ getItem: () => null, setItem: () => undefined });
  views.set(view);
  return {
    store: createStore(project),
    playback: silentPlayback(),
    view: views,
    shelf,
    autosave: {
      status: () => ({ kind: 'saved' }),
      subscribe: () => () => undefined,
      flush: () => undefined,
      stop: () => undefined,
    },
    opening: {},
  };
}
