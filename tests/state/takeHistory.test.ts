import { describe, expect, it } from 'vitest';
import { err, ok } from '../../src/core/result.ts';
import type { PageTalk } from '../../src/state/otherPages.ts';
import type { StorageError } from '../../src/state/rooms.ts';
import { createStore } from '../../src/state/store.ts';
import { createTakeHistory, randomTakeId } from '../../src/state/takeHistory.ts';
import { type MemoryStorage, memoryStorage } from '../support/memoryStorage.ts';
import { project } from '../support/project.ts';
import { takeRecord } from '../support/takeRecords.ts';

const FULL: StorageError = { kind: 'full', reason: 'QuotaExceededError' };

/** Pages that hear each other. */
function pageTalks(): () => PageTalk {
  const pages: ((id: string) => void)[][] = [];
  return () => {
    const mine: ((id: string) => void)[] = [];
    pages.push(mine);
    return {
      tell: (id) => {
        for (const other of pages) if (other !== mine) for (const listener of other) listener(id);
      },
      onTold: (listener) => mine.push(listener),
    };
  };
}

async function settled(): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve));
}

let count = 0;

/** A page with the song `one` open on a storage that keeps `one` and `two`. */
async function openPage(storage: MemoryStorage = memoryStorage(), talk = pageTalks()()) {
  for (const id of ['one', 'two']) await storage.saveProject(project({ id }), 0);
  const store = createStore(project({ id: 'one' }));
  const history = createTakeHistory({
    store,
    storage: ok(storage),
    talk,
    newTakeId: () => `take ${++count}`,
  });
  await settled();
  const times = () => history.state().takes.map(({ atMs }) => atMs);
  return { storage, store, history, times };
}

const at = (atMs: number) => takeRecord({ atMs });

describe('the history of takes', () => {
  it('has what was kept at another visit and what is played now, in order of time', async () => {
    const { storage, history } = await openPage();
    history.keep('one', [at(3), at(1)]);
    await settled();
    const later = await openPage(storage);
    expect(later.times()).toEqual([1, 3]);
    later.history.keep('one', [at(2)]);
    expect(later.times()).toEqual([1, 2, 3]);
  });

  it('is that of the song that lies open', async () => {
    const { store, history, times } = await openPage();
    history.keep('one', [at(1)]);
    history.keep('two', [at(2)]);
    expect(times()).toEqual([1]);
    store.replace(project({ id: 'two' }));
    await settled();
    expect(times()).toEqual([2]);
  });

  it('follows what another page keeps and deletes', async () => {
    const talks = pageTalks();
    const here = await openPage(memoryStorage(), talks());
    const there = await openPage(here.storage, talks());
    there.history.keep('one', [at(1), at(2)]);
    await settled();
    expect(here.times()).toEqual([1, 2]);
    here.history.crossOut(
      here.history
        .state()
        .takes.slice(0, 1)
        .map(({ id }) => id),
    );
    await here.history.deleteCrossedOut();
    await settled();
    expect(there.times()).toEqual([2]);
  });

  it('does not count what is crossed out, until it is put back', async () => {
    const { storage, history, times } = await openPage();
    history.keep('one', [at(1), at(2)]);
    await settled();
    const [first] = history.state().takes;
    history.crossOut([first!.id]);
    expect(times()).toEqual([2]);
    expect(history.state().crossedOut).toEqual([first]);
    expect(storage.takeRows.get('one')?.size).toBe(2);
    history.putBack([first!.id]);
    expect(times()).toEqual([1, 2]);
  });

  it('deletes for good what is crossed out, and nothing of it with another song', async () => {
    const { storage, store, history, times } = await openPage();
    history.keep('one', [at(1), at(2)]);
    await settled();
    history.crossOut(history.state().takes.map(({ id }) => id));
    store.replace(project({ id: 'two' }));
    await history.deleteCrossedOut();
    store.replace(project({ id: 'one' }));
    await settled();
    expect(times()).toEqual([1, 2]);
    history.crossOut(history.state().takes.map(({ id }) => id));
    await history.deleteCrossedOut();
    expect(history.state()).toEqual({ takes: [], crossedOut: [] });
    expect(storage.takeRows.get('one')?.size).toBe(0);
  });

  it('counts for this visit where there is no storage, and says so', async () => {
    const error: StorageError = { kind: 'unavailable', reason: 'private' };
    const store = createStore(project({ id: 'one' }));
    const history = createTakeHistory({
      store,
      storage: err(error),
      talk: pageTalks()(),
      newTakeId: randomTakeId,
    });
    history.keep('one', [at(1)]);
    store.replace(project({ id: 'two' }));
    expect(history.state().takes).toEqual([]);
    store.replace(project({ id: 'one' }));
    expect(history.state()).toMatchObject({ takes: [{ atMs: 1 }], problem: error });
  });

  it('tries again with the next take to keep what could not be kept', async () => {
    const { storage, history, times } = await openPage();
    storage.failure = FULL;
    history.keep('one', [at(1)]);
    await settled();
    expect(history.state()).toMatchObject({ takes: [{ atMs: 1 }], problem: FULL });
    storage.failure = undefined;
    history.keep('one', [at(2)]);
    await settled();
    expect(history.state().problem).toBeUndefined();
    expect(times()).toEqual([1, 2]);
    expect(storage.takeRows.get('one')?.size).toBe(2);
  });

  it('brings back what could not be deleted', async () => {
    const { storage, history, times } = await openPage();
    history.keep('one', [at(1)]);
    await settled();
    history.crossOut(history.state().takes.map(({ id }) => id));
    storage.failure = FULL;
    const deleting = history.deleteCrossedOut();
    storage.failure = undefined;
    await deleting;
    await settled();
    expect(storage.takeRows.get('one')?.size).toBe(1);
    expect(times()).toEqual([1]);
  });

  it('leaves no take to a later pattern under the id of a deleted one, but to one that is brought back', async () => {
    const { storage, store, history } = await openPage();
    const ofP = () => history.state().takes.map(({ target }) => Object.values(target)[1] === 'p');
    const patterns = store.snapshot().patterns;
    const setPatterns = (next: typeof patterns) =>
      store.edit((before) => ({ ...before, patterns: next }), { label: 'patterns' });
    history.keep('one', [at(1)]);
    await settled();
    setPatterns([]);
    store.undo();
    expect(ofP()).toEqual([true]);
    setPatterns([]);
    setPatterns([{ ...patterns[0]!, name: 'Another' }]);
    expect(ofP()).toEqual([false]);
    await settled();
    expect([...storage.takeRows.get('one')!.values()]).toEqual(history.state().takes);
  });

  it('leaves no take to a later song under the id of a deleted one', async () => {
    const { storage, store, history } = await openPage();
    history.keep('two', [at(1)]);
    await settled();
    await storage.deleteProject('two');
    history.keep('two', [at(2)]);
    await settled();
    history.forget('two');
    await storage.saveProject(project({ id: 'two' }), 1);
    store.replace(project({ id: 'two' }));
    await settled();
    expect(history.state().takes).toEqual([]);
  });
});

it('gives every take an identity of its own', () =>
  expect(new Set(Array.from({ length: 1000 }, randomTakeId)).size).toBe(1000));
