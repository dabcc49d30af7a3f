import { describe, expect, it } from 'vitest';
import { err, ok } from '../../src/core/result.ts';
import { firstProject } from '../../src/state/firstProject.ts';
import { openingProject } from '../../src/state/opening.ts';
import { OPENING_MS, openingMarkIn } from '../../src/state/openingMark.ts';
import type {
  KeptProject,
  Storage,
  StorageError,
  UnreadableProject,
} from '../../src/state/storage.ts';
import { project } from '../support/project.ts';

const FAILED: StorageError = { kind: 'failed', reason: 'UnknownError' };
const UNREADABLE: UnreadableProject = {
  kind: 'unreadable',
  title: 'Old song',
  text: '{}',
  error: { kind: 'not-a-project' },
};

function kept(...ids: string[]): KeptProject[] {
  return ids.map((id) => ({ id, title: id, savedAtMs: 0 }));
}

/** The mark of a page in a browser that keeps `texts`. */
function markIn(texts: Map<string, string>, nowMs = 0) {
  const textsOfPage = {
    getItem: (name: string) => texts.get(name) ?? null,
    setItem: (name: string, text: string) => void texts.set(name, text),
    removeItem: (name: string) => void texts.delete(name),
  };
  return openingMarkIn(textsOfPage, 'test', () => nowMs);
}

function unmarked() {
  return markIn(new Map());
}

/** A storage that answers what the start asks of it. */
function storageWith(answers: Pick<Storage, 'lastProject' | 'projects'>): Storage {
  return answers as Storage;
}

describe('the start', () => {
  it('opens the project saved last', async () => {
    const last = project({ id: 'mine' });
    const storage = storageWith({
      lastProject: async () => ok(last),
      projects: async () => ok([]),
    });
    expect(await openingProject(ok(storage), [], unmarked())).toEqual({
      project: last,
      storage: ok(storage),
    });
  });

  it('opens the first song where nothing was saved', async () => {
    const storage = storageWith({
      lastProject: async () => ok(undefined),
      projects: async () => ok([]),
    });
    expect(await openingProject(ok(storage), [], unmarked())).toEqual({
      project: firstProject([]),
      storage: ok(storage),
    });
  });

  it('opens the first song beside one that cannot be read, never over it', async () => {
    const storage = storageWith({
      lastProject: async () => err(UNREADABLE),
      projects: async () => ok(kept('song-1', 'song-3')),
    });
    const opening = await openingProject(ok(storage), [], unmarked());
    expect(opening.project).toEqual({ ...firstProject([]), id: 'song-2' });
    expect(opening.problem).toBe(UNREADABLE);
    expect(opening.storage).toEqual(ok(storage));
  });

  it('does not write to a storage that cannot list its songs', async () => {
    const storage = storageWith({
      lastProject: async () => err(FAILED),
      projects: async () => err(FAILED),
    });
    const opening = await openingProject(ok(storage), [], unmarked());
    expect(opening).toEqual({ project: firstProject([]), storage: err(FAILED), problem: FAILED });
  });

  it('opens the first song without any storage', async () =>
    expect(await openingProject(err(FAILED), [], unmarked())).toEqual({
      project: firstProject([]),
      storage: err(FAILED),
      problem: FAILED,
    }));
});

describe('a song that was opened and never came up', () => {
  const storage = storageWith({
    lastProject: async () => ok(project({ id: 'mine' })),
    projects: async () => ok(kept('mine')),
  });
  const later = OPENING_MS + 1;

  it('is left closed the next time, and can be opened the time after', async () => {
    const texts = new Map<string, string>();
    expect((await openingProject(ok(storage), [], markIn(texts))).project.id).toBe('mine');
    const next = markIn(texts, later);
    const opening = await openingProject(ok(storage), [], next);
    expect(opening.problem).toEqual({ kind: 'left-closed', title: 'mine' });
    expect(opening.project.id).not.toBe('mine');
    next.end();
    expect((await openingProject(ok(storage), [], markIn(texts, later))).project.id).toBe('mine');
  });

  it('is opened where another tab is only just opening', async () => {
    const texts = new Map<string, string>();
    markIn(texts).begin();
    const opening = await openingProject(ok(storage), [], markIn(texts, OPENING_MS));
    expect(opening.project.id).toBe('mine');
  });

  it('is opened where the browser keeps no marks', async () => {
    const mark = openingMarkIn(undefined, 'test', () => 0);
    mark.begin();
    expect((await openingProject(ok(storage), [], mark)).project.id).toBe('mine');
  });
});
