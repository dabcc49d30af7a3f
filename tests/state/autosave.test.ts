import { describe, expect, it } from 'vitest';
import type { Project } from '../../src/core/project.ts';
import { err, ok, type Result } from '../../src/core/result.ts';
import { createAutosave, type PageLife, SAVE_INTERVAL_MS } from '../../src/state/autosave.ts';
import { setTitle } from '../../src/state/edits/song.ts';
import type { Storage, StorageError } from '../../src/state/storage.ts';
import { createStore } from '../../src/state/store.ts';
import { project } from '../support/project.ts';

const FULL: StorageError = { kind: 'full', reason: 'QuotaExceededError' };

/** A page whose time passes only when the test says so. */
function fakePage() {
  const waits = new Set<{ readonly atMs: number; readonly act: () => void }>();
  const leavings = new Set<() => void>();
  let nowMs = 0;
  const page: PageLife = {
    later: (act, afterMs) => {
      const wait = { atMs: nowMs + afterMs, act };
      waits.add(wait);
      return () => waits.delete(wait);
    },
    nowMs: () => nowMs,
    onLeaving: (act) => {
      leavings.add(act);
      return () => leavings.delete(act);
    },
  };
  return {
    page,
    leave: () => {
      for (const act of leavings) act();
    },
    pass: (ms: number) => {
      nowMs += ms;
      for (const wait of waits)
        if (wait.atMs <= nowMs) {
          waits.delete(wait);
          wait.act();
        }
    },
  };
}

/** A storage that keeps what it is told in order, and fails while `failure` is set. */
function fakeStorage() {
  const saved: { readonly title: string; readonly atMs: number }[] = [];
  const state: { failure?: StorageError } = {};
  const saveProject = async ({ song }: Project, atMs: number) => {
    if (state.failure) return err(state.failure);
    saved.push({ title: song.title, atMs });
    return ok(undefined);
  };
  return { saved, state, storage: { saveProject, saveBeforeLeaving: saveProject } as Storage };
}

/** Lets what was begun come to its end. */
async function settle(): Promise<void> {
  for (let i = 0; i < 5; i++) await Promise.resolve();
}

function bench(opened?: Result<Storage, StorageError>) {
  const store = createStore(project());
  const { page, leave, pass } = fakePage();
  const { saved, state, storage } = fakeStorage();
  const autosave = createAutosave(store, opened ?? ok(storage), page);
  const statuses: string[] = [autosave.status().kind];
  autosave.subscribe(() => statuses.push(autosave.status().kind));
  const title = (text: string) => store.edit(setTitle(text), { label: 'title' });
  const titles = () => saved.map((one) => one.title);
  return { store, autosave, statuses, saved, titles, state, title, leave, pass };
}

describe('saving as edits happen', () => {
  it('begins with what lies open', async () => {
    const { titles, autosave } = bench();
    expect(autosave.status()).toEqual({ kind: 'saving' });
    await settle();
    expect(titles()).toEqual(['Test song']);
    expect(autosave.status()).toEqual({ kind: 'saved' });
  });

  it('writes the first edit at once and those that follow together, at most the interval later', async () => {
    const { title, titles, pass } = bench();
    pass(SAVE_INTERVAL_MS);
    title('a');
    expect(titles()).toEqual(['Test song', 'a']);
    title('b');
    pass(SAVE_INTERVAL_MS / 2);
    title('c');
    expect(titles()).toEqual(['Test song', 'a']);
    pass(SAVE_INTERVAL_MS / 2);
    expect(titles()).toEqual(['Test song', 'a', 'c']);
    await settle();
  });

  it('writes nothing when nothing changed', async () => {
    const { titles, pass, leave, autosave } = bench();
    await settle();
    pass(SAVE_INTERVAL_MS);
    pass(SAVE_INTERVAL_MS);
    leave();
    autosave.flush();
    expect(titles()).toEqual(['Test song']);
  });

  it('writes at once when the page may go', () => {
    const { title, titles, leave } = bench();
    title('a');
    leave();
    expect(titles()).toEqual(['Test song', 'a']);
  });

  it('writes once more, in the safe way, what is not known to be written when the page may go', async () => {
    const { title, titles, leave, pass } = bench();
    pass(SAVE_INTERVAL_MS);
    title('a');
    leave();
    expect(titles()).toEqual(['Test song', 'a', 'a']);
    await settle();
    leave();
    expect(titles()).toEqual(['Test song', 'a', 'a']);
  });

  it('writes undo, redo and another project that is opened as well', () => {
    const { store, title, titles, pass } = bench();
    const changes = [
      () => title('a'),
      () => store.undo(),
      () => store.redo(),
      () => store.replace(project({ id: 'other' })),
    ];
    for (const change of changes) {
      pass(SAVE_INTERVAL_MS);
      change();
    }
    expect(titles()).toEqual(['Test song', 'a', 'Test song', 'a', 'Test song']);
  });

  it('says when everything is kept, and that an edit taken back in time was never in danger', async () => {
    const { store, title, statuses, pass } = bench();
    await settle();
    title('a');
    store.undo();
    pass(SAVE_INTERVAL_MS);
    await settle();
    expect(statuses).toEqual(['saving', 'saved', 'saving', 'saved']);
  });

  it('dates what it writes', () => {
    const { title, saved, pass } = bench();
    pass(1234);
    title('a');
    expect(saved.map(({ atMs }) => atMs)).toEqual([0, 1234]);
  });

  it('writes the last change and then no more when it is stopped', async () => {
    const { title, titles, autosave, pass, leave } = bench();
    await settle();
    title('a');
    autosave.stop();
    title('b');
    pass(SAVE_INTERVAL_MS);
    leave();
    expect(titles()).toEqual(['Test song', 'a']);
  });
});

describe('when nothing can be kept', () => {
  it('says so from the beginning where the storage could not be opened', async () => {
    const error: StorageError = { kind: 'unavailable', reason: 'private window' };
    const { autosave, title } = bench(err(error));
    await settle();
    title('a');
    await settle();
    expect(autosave.status()).toEqual({ kind: 'failed', error });
  });

  it('says so until a later change can be kept', async () => {
    const { autosave, title, state, statuses, titles, pass } = bench();
    await settle();
    state.failure = FULL;
    pass(SAVE_INTERVAL_MS);
    title('a');
    await settle();
    expect(autosave.status()).toEqual({ kind: 'failed', error: FULL });
    delete state.failure;
    pass(SAVE_INTERVAL_MS);
    title('b');
    expect(autosave.status()).toEqual({ kind: 'failed', error: FULL });
    await settle();
    expect(autosave.status()).toEqual({ kind: 'saved' });
    expect(titles()).toEqual(['Test song', 'b']);
    expect(statuses).toEqual(['saving', 'saved', 'saving', 'failed', 'saved']);
  });

  it('tries again when the page may go, but does not keep trying by itself', async () => {
    const { title, state, titles, pass, leave } = bench();
    state.failure = FULL;
    pass(SAVE_INTERVAL_MS);
    title('a');
    await settle();
    delete state.failure;
    pass(SAVE_INTERVAL_MS);
    expect(titles()).toEqual(['Test song']);
    leave();
    expect(titles()).toEqual(['Test song', 'a']);
  });
});
