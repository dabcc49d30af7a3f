import type { IDBPDatabase } from 'idb';
import type { TakeRecord } from '../core/practice/takeRecord.ts';
import type { Project } from '../core/project.ts';
import { decodeTake, encodeTake } from '../formats/takeSchema.ts';
import { type Kept, kept, type Rooms } from './rooms.ts';

/** Identity of a kept take among those of its song. */
export type TakeId = string;

export type KeptTake = TakeRecord & { readonly id: TakeId };

/** The takes of a song: the ids of all that are kept, and those that can be read of the ones asked for. */
export type TakesRead = { readonly ids: readonly TakeId[]; readonly takes: readonly KeptTake[] };

/** The takes of the songs on this device. What fails comes back as an error, never as an exception. */
export type TakeRoom = {
  /** Keeps takes of a song in place of those with their ids. Whether it did: not where the song itself is not kept (any more). */
  readonly saveTakes: (songId: Project['id'], takes: readonly KeptTake[]) => Kept<boolean>;
  /** The takes of a song but the known ones, in no order. What is no take is left out; it stays where it is. */
  readonly takes: (songId: Project['id'], known: ReadonlySet<TakeId>) => Kept<TakesRead>;
  readonly deleteTakes: (songId: Project['id'], ids: readonly TakeId[]) => Kept<undefined>;
};

/** The keys of all takes of a song: an array stands above every text. */
function keysOf(songId: Project['id']): IDBKeyRange {
  return IDBKeyRange.bound([songId], [songId, []]);
}

function takesIn(ids: readonly TakeId[], rows: readonly unknown[]): KeptTake[] {
  return rows.flatMap((row, i) => {
    const take = decodeTake(row);
    return take.ok ? [{ ...take.value, id: ids[i]! }] : [];
  });
}

async function save(
  db: IDBPDatabase<Rooms>,
  songId: Project['id'],
  takes: readonly KeptTake[],
): Promise<boolean> {
  const write = db.transaction(['projects', 'takes'], 'readwrite');
  const isKept = (await write.objectStore('projects').getKey(songId)) !== undefined;
  const room = write.objectStore('takes');
  const puts = isKept
    ? takes.map(({ id, ...take }) => room.put(encodeTake(take), [songId, id]))
    : [];
  await Promise.all([...puts, write.done]);
  return isKept;
}

async function read(
  db: IDBPDatabase<Rooms>,
  songId: Project['id'],
  known: ReadonlySet<TakeId>,
): Promise<TakesRead> {
  const { store } = db.transaction('takes');
  const ids = (await store.getAllKeys(keysOf(songId))).map(([, id]) => id);
  if (known.size === 0) return { ids, takes: takesIn(ids, await store.getAll(keysOf(songId))) };
  const unknown = ids.filter((id) => !known.has(id));
  const rows = await Promise.all(unknown.map((id) => store.get([songId, id])));
  return { ids, takes: takesIn(unknown, rows) };
}

/** The room for takes in an open database. */
export function takeRoomIn(db: IDBPDatabase<Rooms>): TakeRoom {
  return {
    saveTakes: (songId, takes) => kept(() => save(db, songId, takes)),
    takes: (songId, known) => kept(() => read(db, songId, known)),
    deleteTakes: (songId, ids) =>
      kept(async () => {
        const write = db.transaction('takes', 'readwrite');
        await Promise.all([...ids.map((id) => write.store.delete([songId, id])), write.done]);
        return undefined;
      }),
  };
}

/** Deletes a project and its takes, both or neither. */
export async function deleteWithTakes(
  db: IDBPDatabase<Rooms>,
  projectId: Project['id'],
): Promise<undefined> {
  const write = db.transaction(['projects', 'takes'], 'readwrite');
  await Promise.all([
    write.objectStore('projects').delete(projectId),
    write.objectStore('takes').delete(keysOf(projectId)),
    write.done,
  ]);
  return undefined;
}
