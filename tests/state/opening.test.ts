import { describe, expect, it } from 'vitest';
import { err, ok } from '../../src/core/result.ts';
import { firstProject } from '../../src/state/firstProject.ts';
import { openingProject } from '../../src/state/opening.ts';
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
    expect(await openingProject(ok(storage), [])).toEqual({ project: last, storage: ok(storage) });
  });

  it('opens the first song where nothing was saved', async () => {
    const storage = storageWith({
      lastProject: async () => ok(undefined),
      projects: async () => ok([]),
    });
    expect(await openingProject(ok(storage), [])).toEqual({
      project: firstProject([]),
      storage: ok(storage),
    });
  });

  it('opens the first song beside one that cannot be read, never over it', async () => {
    const storage = storageWith({
      lastProject: async () => err(UNREADABLE),
      projects: async () => ok(kept('song-1', 'song-3')),
    });
    const opening = await openingProject(ok(storage), []);
    expect(opening.project).toEqual({ ...firstProject([]), id: 'song-2' });
    expect(opening.problem).toBe(UNREADABLE);
    expect(opening.storage).toEqual(ok(storage));
  });

  it('does not write to a storage that cannot list its songs', async () => {
    const storage = storageWith({
      lastProject: async () => err(FAILED),
      projects: async () => err(FAILED),
    });
    const opening = await openingProject(ok(storage), []);
    expect(opening).toEqual({ project: firstProject([]), storage: err(FAILED), problem: FAILED });
  });

  it('opens the first song without any storage', async () =>
    expect(await openingProject(err(FAILED), [])).toEqual({
      project: firstProject([]),
      storage: err(FAILED),
      problem: FAILED,
    }));
});
