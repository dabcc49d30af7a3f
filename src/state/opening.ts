import type { Project } from '../core/project.ts';
import { err, ok, type Result } from '../core/result.ts';
import type { Pattern } from '../core/rhythm/pattern.ts';
import { firstProject } from './firstProject.ts';
import { newId } from './newIds.ts';
import type { OpeningMark } from './openingMark.ts';
import type { Storage, StorageError, UnreadableProject } from './storage.ts';

/**
 * What the tool starts with: the project to open, where to save it, and what went wrong, if anything
 * did. A song that cannot be read stays in the storage as it is.
 */
export type Opening = {
  readonly project: Project;
  readonly storage: Result<Storage, StorageError>;
  readonly problem?: UnreadableProject | StorageError | LeftClosed;
};

/** The song saved last froze the page or failed when it was opened, and was not opened again; it is kept as it is. */
export type LeftClosed = { readonly kind: 'left-closed'; readonly title: string };

/**
 * The project saved last; where there is none, or it cannot be read, the first song under an id that
 * no kept song has, so that none is overwritten. A storage that cannot even list its songs is not
 * written to. Where the song that was opened before never came up (`mark`), the last one is not even
 * read. The mark is begun; the page ends it once the song stands there.
 */
export async function openingProject(
  storage: Result<Storage, StorageError>,
  shelf: readonly Pattern[],
  mark: OpeningMark,
): Promise<Opening> {
  const isLeft = mark.isLeft();
  mark.begin();
  const first = firstProject(shelf);
  if (!storage.ok) return { project: first, storage, problem: storage.error };
  const last = isLeft ? ok(undefined) : await storage.value.lastProject();
  if (last.ok && last.value) return { project: last.value, storage };
  const songs = await storage.value.projects();
  if (!songs.ok) return { project: first, storage: err(songs.error), problem: songs.error };
  const id = newId(
    'song',
    songs.value.map((song) => song.id),
  );
  const project = { ...first, id };
  if (!last.ok) return { project, storage, problem: last.error };
  const [newest] = songs.value;
  return isLeft && newest
    ? { project, storage, problem: { kind: 'left-closed', title: newest.title } }
    : { project, storage };
}
