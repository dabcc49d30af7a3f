import { type IDBPDatabase, openDB } from 'idb';
import type { Project } from '../core/project.ts';
import { err, ok, type Result } from '../core/result.ts';
import { decodeProject, encodeProject, type ProjectFileError } from '../formats/projectFile.ts';
import {
  type KeptTexts,
  type LastWords,
  lastWordsIn,
  type ProjectRow,
  pageTexts,
} from './lastWords.ts';
import {
  type Kept,
  kept,
  OPEN_PROJECT,
  type Rooms,
  type StorageError,
  storageError,
} from './rooms.ts';
import { deleteWithTakes, type TakeRoom, takeRoomIn } from './takeRoom.ts';

export type { StorageError } from './rooms.ts';

/** What the list of kept songs shows; `savedAtMs` counts from 1970, as the page's clock does. */
export type KeptProject = {
  readonly id: Project['id'];
  readonly title: string;
  readonly savedAtMs: number;
};

const ROOMS_VERSION = 1;

/** What is kept under a project's id is no project any more; `text` is all of it, so that it can be handed out. */
export type UnreadableProject = {
  readonly kind: 'unreadable';
  readonly title: string;
  readonly text: string;
  readonly error: ProjectFileError;
};

type OpenedProject = Promise<Result<Project | undefined, StorageError | UnreadableProject>>;

/** Songs, their takes and recordings on this device. What fails comes back as an error, never as an exception. */
export type Storage = TakeRoom & {
  /**
   * Keeps the project under its id in place of what was there, and remembers it as the open one.
   * Writes are done in the order of their calls.
   */
  readonly saveProject: (project: Project, atMs: number) => Kept<undefined>;
  /** The same for a page that may go now: what is to be saved is safe when the call returns. */
  readonly saveBeforeLeaving: (project: Project, atMs: number) => Kept<undefined>;
  /** The project of an id; undefined where none is kept. */
  readonly openProject: (id: Project['id']) => OpenedProject;
  /** The project saved last; undefined where there is none. */
  readonly lastProject: () => OpenedProject;
  /** All projects, the one saved last first. */
  readonly projects: () => Kept<readonly KeptProject[]>;
  /** Deletes a project and its takes, so that a later one under its id has none of them. */
  readonly deleteProject: (id: Project['id']) => Kept<undefined>;
  /** Keeps a recording's file under an id in place of what was there. */
  readonly saveRecording: (id: string, file: Blob) => Kept<undefined>;
  /** A recording's file; undefined where none is kept under the id. */
  readonly recording: (id: string) => Kept<Blob | undefined>;
  readonly deleteRecording: (id: string) => Kept<undefined>;
  /** Ends the use of the storage; what was begun is still done. */
  readonly close: () => void;
};

function projectOf(row: ProjectRow | undefined): Awaited<OpenedProject> {
  if (!row) return ok(undefined);
  const project = decodeProject(row.text);
  if (project.ok) return project;
  return err({ kind: 'unreadable', title: row.title, text: row.text, error: project.error });
}

function rowOf(project: Project, savedAtMs: number): ProjectRow {
  const { id, song } = project;
  return { id, title: song.title, savedAtMs, text: encodeProject(project) };
}

/** Writes a project and that it is the open one; not waiting for the puts has a page that goes take less back. */
async function writeRow(db: IDBPDatabase<Rooms>, row: ProjectRow): Promise<void> {
  const write = db.transaction(['projects', 'desk'], 'readwrite');
  const puts = [
    write.objectStore('projects').put(row, row.id),
    write.objectStore('desk').put(row.id, OPEN_PROJECT),
  ];
  write.commit();
  await Promise.all([...puts, write.done]);
}

/** Brings what a page left unsaved into the database, unless that has something newer. */
async function takeUpLastWords(db: IDBPDatabase<Rooms>, lastWords: LastWords): Promise<void> {
  const left = lastWords.read();
  if (!left) return;
  const row = await db.get('projects', left.id);
  if (!row || row.savedAtMs < left.savedAtMs) await writeRow(db, left);
  lastWords.clearUpTo(left.savedAtMs);
}

/** The storage in an open database: see `openStorage`. */
export function createStorage(db: IDBPDatabase<Rooms>, lastWords: LastWords): Storage {
  const save = (row: ProjectRow) =>
    kept(async () => {
      await writeRow(db, row);
      lastWords.clearUpTo(row.savedAtMs);
      return undefined;
    });
  const openProject = async (id: Project['id']): OpenedProject => {
    const row = await kept(() => db.get('projects', id));
    return row.ok ? projectOf(row.value) : row;
  };
  return {
    ...takeRoomIn(db),
    openProject,
    saveProject: (project, atMs) => save(rowOf(project, atMs)),
    saveBeforeLeaving: (project, atMs) => {
      const row = rowOf(project, atMs);
      lastWords.write(row);
      return save(row);
    },
    lastProject: async () => {
      const id = await kept(() => db.get('desk', OPEN_PROJECT));
      if (!id.ok) return id;
      return id.value === undefined ? ok(undefined) : openProject(id.value);
    },
    projects: () =>
      kept(async () => {
        const rows = await db.getAll('projects');
        return rows
          .map(({ id, title, savedAtMs }) => ({ id, title, savedAtMs }))
          .toSorted((a, b) => b.savedAtMs - a.savedAtMs);
      }),
    deleteProject: (id) => kept(() => deleteWithTakes(db, id)),
    saveRecording: (id, file) => kept(() => db.put('recordings', file, id).then(() => undefined)),
    recording: (id) => kept(() => db.get('recordings', id)),
    deleteRecording: (id) => kept(() => db.delete('recordings', id).then(() => undefined)),
    close: () => db.close(),
  };
}

/**
 * Opens the storage of a name, which is made where there is none. What a page before could not finish
 * to save (`texts` kept it) is taken up first. The storage gives way to a page of a later release
 * that wants to change it: what this page saves after that fails.
 */
export async function openStorage(
  name: string,
  texts: KeptTexts | undefined = pageTexts(),
): Kept<Storage> {
  const lastWords = lastWordsIn(texts, name);
  try {
    const db = await openDB<Rooms>(name, ROOMS_VERSION, {
      upgrade: (database) => {
        for (const room of ['projects', 'takes', 'recordings', 'desk'] as const)
          database.createObjectStore(room);
      },
      blocking: (_current, _wanted, event) => (event.target as IDBDatabase).close(),
    });
    await takeUpLastWords(db, lastWords);
    return ok(createStorage(db, lastWords));
  } catch (error) {
    return err(storageError(error, 'unavailable'));
  }
}
