import type { Project } from '../core/project.ts';
import type { Autosave } from './autosave.ts';
import { sameData } from './sameData.ts';
import type { Storage } from './storage.ts';
import type { Store } from './store.ts';

/** What pages of this tool on this device tell each other; what one tells, all others hear. */
export type PageTalk = {
  readonly tell: (savedId: Project['id']) => void;
  readonly onTold: (listener: (savedId: Project['id']) => void) => void;
};

/** The pages that the browser has open side by side; alone where it does not let them talk. */
export function pageTalk(name: string): PageTalk {
  if (typeof BroadcastChannel === 'undefined')
    return { tell: () => undefined, onTold: () => undefined };
  const channel = new BroadcastChannel(name);
  return {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a broadcast has none
    tell: (savedId) => channel.postMessage(savedId),
    onTold: (listener) =>
      channel.addEventListener('message', ({ data }) => {
        if (typeof data === 'string') listener(data);
      }),
  };
}

/** The storage, telling other pages of every project that it has saved. */
export function toldStorage(storage: Storage, talk: Pick<PageTalk, 'tell'>): Storage {
  const told =
    (save: Storage['saveProject']): Storage['saveProject'] =>
    async (project, atMs) => {
      const saved = await save(project, atMs);
      if (saved.ok) talk.tell(project.id);
      return saved;
    };
  return {
    ...storage,
    saveProject: told(storage.saveProject),
    saveBeforeLeaving: told(storage.saveBeforeLeaving),
  };
}

/**
 * Lets the open project follow what another page saves of it, so that the two do not overwrite each
 * other's edits; what was done here before can't be undone then. A page that has something of its own
 * still to save does not follow.
 */
export function followOtherPages(
  store: Store,
  autosave: Pick<Autosave, 'status' | 'adopt'>,
  storage: Pick<Storage, 'openProject'>,
  talk: Pick<PageTalk, 'onTold'>,
): void {
  talk.onTold((savedId) => {
    void follow(savedId);
  });

  async function follow(savedId: Project['id']): Promise<void> {
    const here = store.snapshot();
    if (savedId !== here.id) return;
    const read = await storage.openProject(savedId);
    const isQuiet = store.snapshot() === here && autosave.status().kind === 'saved';
    if (!isQuiet || !read.ok || !read.value || sameData(read.value, here)) return;
    autosave.adopt(read.value);
    store.replace(read.value);
  }
}
