import type { Project } from '../core/project.ts';
import type { Result } from '../core/result.ts';
import type { Storage, StorageError } from './storage.ts';
import type { Store } from './store.ts';

/** Whether what is on the screen is kept: all of it, soon, or not, and why. */
export type SavingStatus =
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  | { readonly kind: 'failed'; readonly error: StorageError };

export type Autosave = {
  readonly status: () => SavingStatus;
  /** Calls `listener` at every change of the status; gives the function that ends it. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Saves at once what is not saved yet, as before leaving; also what could not be saved before. */
  readonly flush: () => void;
  /** Takes a project for saved that comes from the storage, before it is put into the store. */
  readonly adopt: (project: Project) => void;
  /** Flushes and saves nothing after that. */
  readonly stop: () => void;
};

/** What the page gives: a wait that can be called off, the time, and the moments at which it may go. */
export type PageLife = {
  readonly later: (act: () => void, afterMs: number) => () => void;
  readonly nowMs: () => number;
  readonly onLeaving: (act: () => void) => () => void;
};

/** Edits that follow a save sooner than this are saved together. */
export const SAVE_INTERVAL_MS = 300;

type HowToSave = 'saveProject' | 'saveBeforeLeaving';

const SAVED: SavingStatus = { kind: 'saved' };
const SAVING: SavingStatus = { kind: 'saving' };

/**
 * Keeps the store's project saved: what it holds now, every edit, undo and redo, and another project
 * when it is opened. The first change is written at once, those within `SAVE_INTERVAL_MS` of a write
 * together at its end, and everything before the page is left, reloaded or put into the background;
 * so only where the browser itself breaks off can anything be lost: the edits of that interval.
 * What cannot be saved is tried again at the next change. `storage` is what `openStorage` gave:
 * where it could not be opened, the status says so from the beginning.
 */
export function createAutosave(
  store: Store,
  storage: Result<Storage, StorageError>,
  page: PageLife,
): Autosave {
  const listeners = new Set<() => void>();
  let status: SavingStatus = SAVING;
  let begun: Project | undefined;
  let saved: Project | undefined;
  let failure: SavingStatus | undefined;
  let callOffWait: (() => void) | undefined;

  function tellStatus(): void {
    const next = store.snapshot() === saved ? SAVED : (failure ?? SAVING);
    if (next === status) return;
    status = next;
    for (const listener of listeners) listener();
  }

  async function save(project: Project, how: HowToSave): Promise<void> {
    const result = storage.ok ? await storage.value[how](project, page.nowMs()) : storage;
    if (result.ok) saved = project;
    failure = result.ok ? undefined : { kind: 'failed', error: result.error };
    tellStatus();
  }

  function begin(how: HowToSave): void {
    const project = store.snapshot();
    begun = project;
    callOffWait?.();
    callOffWait = page.later(() => {
      callOffWait = undefined;
      saveChange();
    }, SAVE_INTERVAL_MS);
    void save(project, how);
  }

  function saveChange(): void {
    if (store.snapshot() !== begun) begin('saveProject');
  }

  function onChange(): void {
    tellStatus();
    if (!callOffWait) saveChange();
  }

  function flush(): void {
    if (store.snapshot() !== saved) begin('saveBeforeLeaving');
  }

  const endings = [store.subscribe(onChange), page.onLeaving(flush)];
  saveChange();
  return {
    status: () => status,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    flush,
    adopt: (project) => {
      begun = project;
      saved = project;
    },
    stop: () => {
      flush();
      for (const end of endings) end();
      callOffWait?.();
    },
  };
}

/** The life of a browser's page: it may go whenever it is hidden, and goes at `pagehide`. */
export function pageLife(window: Window): PageLife {
  return {
    later: (act, afterMs) => {
      const wait = window.setTimeout(act, afterMs);
      return () => window.clearTimeout(wait);
    },
    nowMs: () => Date.now(),
    onLeaving: (act) => {
      const whenHidden = () => {
        if (window.document.visibilityState === 'hidden') act();
      };
      window.addEventListener('pagehide', act);
      window.document.addEventListener('visibilitychange', whenHidden);
      return () => {
        window.removeEventListener('pagehide', act);
        window.document.removeEventListener('visibilitychange', whenHidden);
      };
    },
  };
}
