import type { Project } from '../../src/core/project.ts';
import { err, ok, type Result } from '../../src/core/result.ts';
import { decodeProject, encodeProject } from '../../src/formats/projectFile.ts';
import type { ProjectRow } from '../../src/state/lastWords.ts';
import type { Storage, StorageError } from '../../src/state/storage.ts';
import type { KeptTake, TakeId } from '../../src/state/takeRoom.ts';

/** A storage that keeps songs as long as the test runs, and fails while `failure` is set. */
export type MemoryStorage = Storage & {
  readonly rows: Map<Project['id'], ProjectRow>;
  readonly takeRows: Map<Project['id'], Map<TakeId, KeptTake>>;
  failure?: StorageError | undefined;
};

/** An empty storage in memory. Recordings are not kept; takes are, as they are. */
export function memoryStorage(): MemoryStorage {
  const rows = new Map<Project['id'], ProjectRow>();
  const takeRows: MemoryStorage['takeRows'] = new Map();
  let last: Project['id'] | undefined;
  const unlessFailing = async <T>(act: () => T): Promise<Result<T, StorageError>> =>
    storage.failure ? err(storage.failure) : ok(act());

  const save = (project: Project, savedAtMs: number) =>
    unlessFailing(() => {
      const { id, song } = project;
      rows.set(id, { id, title: song.title, savedAtMs, text: encodeProject(project) });
      last = id;
      return undefined;
    });
  const openProject: Storage['openProject'] = async (id) => {
    if (storage.failure) return err(storage.failure);
    const row = rows.get(id);
    if (!row) return ok(undefined);
    const read = decodeProject(row.text);
    return read.ok ? read : err({ kind: 'unreadable', ...row, error: read.error });
  };
  const storage: MemoryStorage = {
    rows,
    takeRows,
    saveTakes: (songId, takes) =>
      unlessFailing(() => {
        if (!rows.has(songId)) return false;
        const all = takeRows.get(songId) ?? new Map<TakeId, KeptTake>();
        for (const take of takes) all.set(take.id, take);
        takeRows.set(songId, all);
        return true;
      }),
    takes: (songId, known) =>
      unlessFailing(() => {
        const all = [...(takeRows.get(songId)?.values() ?? [])];
        return { ids: all.map(({ id }) => id), takes: all.filter(({ id }) => !known.has(id)) };
      }),
    deleteTakes: (songId, ids) =>
      unlessFailing(() => {
        for (const id of ids) takeRows.get(songId)?.delete(id);
        return undefined;
      }),
    saveProject: save,
    saveBeforeLeaving: save,
    openProject,
    lastProject: async () => (last === undefined ? ok(undefined) : openProject(last)),
    projects: () =>
      unlessFailing(() =>
        [...rows.values()]
          .map(({ id, title, savedAtMs }) => ({ id, title, savedAtMs }))
          .toSorted((a, b) => b.savedAtMs - a.savedAtMs),
      ),
    deleteProject: (id) =>
      unlessFailing(() => {
        rows.delete(id);
        takeRows.delete(id);
        return undefined;
      }),
    saveRecording: () => unlessFailing(() => undefined),
    recording: () => unlessFailing(() => undefined),
    deleteRecording: () => unlessFailing(() => undefined),
    close: () => undefined,
  };
  return storage;
}
