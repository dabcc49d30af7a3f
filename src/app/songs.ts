import type { Project } from '../core/project.ts';
import { err, ok, type Result } from '../core/result.ts';
import { decodeProject, type ProjectFileError } from '../formats/projectFile.ts';
import type { KeptProject, Storage, StorageError, UnreadableProject } from '../state/storage.ts';
import type { Store } from '../state/store.ts';
import {
  type SongParts as MadeOf,
  newSong,
  songCopy,
  songFromParts,
  type Taken,
  underFreeId,
} from './newSong.ts';
import type { Playback } from './playback.ts';

export type { ProjectFault } from '../formats/projectFault.ts';
export type { ProjectFileError } from '../formats/projectFile.ts';

/**
 * What went wrong with the songs; the open song is untouched by all of it.
 * - `not-listed`, `not-opened`, `not-deleted`: the storage failed
 * - `open-song-not-kept`: the open song can't be saved, so it would be lost by opening another
 *   (`openAnyway`)
 * - `gone`: the song is no longer kept, as another tab has deleted it
 * - `unreadable`: what is kept of the song is no song any more; its text is there to be handed out
 * - `file-not-read`: the browser could not read the file; `reason` is its own word for it
 * - `no-song-file`: what the file holds is no song; the error has the place
 */
export type SongsProblem =
  | {
      readonly kind: 'not-listed' | 'not-opened' | 'not-deleted' | 'open-song-not-kept';
      readonly error: StorageError;
    }
  | { readonly kind: 'gone' }
  | UnreadableProject
  | { readonly kind: 'file-not-read'; readonly fileName: string; readonly reason: string }
  | { readonly kind: 'no-song-file'; readonly fileName: string; readonly error: ProjectFileError };

export type SongsState = {
  /** The kept songs as they were read last, newest first; an open song that was just begun may be missing. */
  readonly kept: readonly KeptProject[];
  /** Songs to be deleted, which can be taken back until `deleteCrossedOut`. */
  readonly crossedOut: readonly Project['id'][];
  readonly problem?: SongsProblem;
};

/** What of a file is used. */
export type SongFile = Pick<File, 'name' | 'text'>;

export type SongsParts = {
  readonly store: Store;
  readonly storage: Result<Storage, StorageError>;
  readonly playback: Pick<Playback, 'stop'>;
  /** Milliseconds since 1970. */
  readonly nowMs: () => number;
  /** Called whenever another song lies open. */
  readonly onOpened: () => void;
  /** Called for every song that is deleted; a later one may get its id. */
  readonly onDeleted: (id: Project['id']) => void;
};

/**
 * The songs on this device. What opens a song stops the sound, saves the open song, and says
 * whether the other one lies open now; where not, `state().problem` says why. Calls are carried out
 * one after the other. The functions need no `this`.
 */
export type Songs = {
  readonly state: () => SongsState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Reads anew which songs are kept; a problem stays. */
  readonly refresh: () => Promise<void>;
  readonly open: (id: Project['id']) => Promise<boolean>;
  /** Opens a new song with one verse. */
  readonly openNew: () => Promise<boolean>;
  /** Opens a song that is made of parts, as from a band's file; the one that lay open is kept. */
  readonly openMade: (parts: MadeOf) => Promise<boolean>;
  /** Opens a copy of a song under a title of its own. */
  readonly openCopy: (id: Project['id']) => Promise<boolean>;
  /** Opens the song of a file; under a new id where a kept song has its id. */
  readonly openFile: (file: SongFile) => Promise<boolean>;
  /** Opens what could not be opened without losing the open song. */
  readonly openAnyway: () => Promise<boolean>;
  readonly crossOut: (id: Project['id']) => void;
  /** Takes back that a song was crossed out. */
  readonly putBack: (id: Project['id']) => void;
  /**
   * Deletes the songs that are crossed out. Where the open one is among them, the newest other song
   * that can be read is opened, or a new one where there is none.
   */
  readonly deleteCrossedOut: () => Promise<void>;
  /** Forgets the problem. */
  readonly dismiss: () => void;
};

async function textOf(file: SongFile): Promise<Result<string, SongsProblem>> {
  try {
    return ok(await file.text());
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return err({ kind: 'file-not-read', fileName: file.name, reason });
  }
}

/** Makes the songs of a storage; none is read before `refresh`. */
export function createSongs(parts: SongsParts): Songs {
  const { store, storage, playback, nowMs, onOpened, onDeleted } = parts;
  const listeners = new Set<() => void>();
  let state: SongsState = { kept: [], crossedOut: [] };
  let notOpened: Project | undefined;
  let lastAct: Promise<unknown> = Promise.resolve();

  function show(change: Partial<SongsState>): void {
    state = { ...state, ...change };
    for (const listener of listeners) listener();
  }

  function dismiss(): void {
    const { problem: _, ...rest } = state;
    notOpened = undefined;
    state = rest;
    show({});
  }

  function failed(problem: SongsProblem): false {
    show({ problem });
    return false;
  }

  function inTurn<T>(act: () => Promise<T>): Promise<T> {
    const result = lastAct.then(act);
    lastAct = result.catch(() => undefined);
    return result;
  }

  function anew<T>(act: () => Promise<T>): Promise<T> {
    return inTurn(() => {
      dismiss();
      return act();
    });
  }

  async function refresh(): Promise<void> {
    const kept = storage.ok ? await storage.value.projects() : storage;
    if (kept.ok) show({ kept: kept.value });
    else failed({ kind: 'not-listed', error: kept.error });
  }

  function replace(next: Project): true {
    playback.stop();
    store.replace(next);
    onOpened();
    return true;
  }

  /** Opens `next` once the open song is safe. */
  async function layOpen(next: Project): Promise<boolean> {
    const saved = storage.ok ? await storage.value.saveProject(store.snapshot(), nowMs()) : storage;
    if (saved.ok) return replace(next);
    notOpened = next;
    return failed({ kind: 'open-song-not-kept', error: saved.error });
  }

  async function projectOf(id: Project['id']): Promise<Result<Project, SongsProblem>> {
    const lyingOpen = store.snapshot();
    if (id === lyingOpen.id) return ok(lyingOpen);
    const read = storage.ok ? await storage.value.openProject(id) : storage;
    if (read.ok) return read.value ? ok(read.value) : err({ kind: 'gone' });
    const { error } = read;
    return err(error.kind === 'unreadable' ? error : { kind: 'not-opened', error });
  }

  async function open(id: Project['id']): Promise<boolean> {
    if (id === store.snapshot().id) return true;
    const project = await projectOf(id);
    return project.ok ? layOpen(project.value) : failed(project.error);
  }

  /**
   * Ids and titles that a song may not have again: those of the open song and of the kept ones.
   * A storage that fails to list them could have one overwritten; one that is not there cannot.
   */
  async function taken(): Promise<Result<Taken, SongsProblem>> {
    const { id, song } = store.snapshot();
    const kept = storage.ok ? await storage.value.projects() : ok([]);
    if (!kept.ok) return err({ kind: 'not-listed', error: kept.error });
    return ok({
      ids: [id, ...kept.value.map((each) => each.id)],
      titles: [song.title, ...kept.value.map((each) => each.title)],
    });
  }

  /** Opens what is made of the ids and titles that are taken. */
  async function layOpenMade(make: (names: Taken) => Project): Promise<boolean> {
    const names = await taken();
    return names.ok ? layOpen(make(names.value)) : failed(names.error);
  }

  async function openCopy(id: Project['id']): Promise<boolean> {
    const project = await projectOf(id);
    return project.ok
      ? layOpenMade((names) => songCopy(project.value, names))
      : failed(project.error);
  }

  async function openFile(file: SongFile): Promise<boolean> {
    const text = await textOf(file);
    if (!text.ok) return failed(text.error);
    const read = decodeProject(text.value);
    return read.ok
      ? layOpenMade((names) => underFreeId(read.value, names))
      : failed({ kind: 'no-song-file', fileName: file.name, error: read.error });
  }

  async function openAnyway(): Promise<boolean> {
    const next = notOpened;
    dismiss();
    return next ? replace(next) : false;
  }

  /** The newest kept song that can be read and is not among `ids`, or a new one. */
  async function newestBut(ids: readonly Project['id'][]): Promise<Result<Project, SongsProblem>> {
    const names = await taken();
    if (!names.ok) return names;
    for (const id of names.value.ids.filter((each) => !ids.includes(each))) {
      const project = await projectOf(id);
      if (project.ok) return project;
    }
    return ok(newSong(names.value));
  }

  async function deleteAll(ids: readonly Project['id'][]): Promise<void> {
    if (ids.includes(store.snapshot().id)) {
      const next = await newestBut(ids);
      if (!next.ok) return void failed(next.error);
      replace(next.value);
    }
    for (const id of ids) {
      const deleted = storage.ok ? await storage.value.deleteProject(id) : storage;
      if (deleted.ok) onDeleted(id);
      else failed({ kind: 'not-deleted', error: deleted.error });
    }
  }

  async function deleteCrossedOut(): Promise<void> {
    const ids = state.crossedOut;
    if (ids.length === 0) return;
    await deleteAll(ids);
    show({ crossedOut: [] });
    await refresh();
  }

  return {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    refresh: () => inTurn(refresh),
    open: (id) => anew(() => open(id)),
    openNew: () => anew(() => layOpenMade(newSong)),
    openMade: (made) => anew(() => layOpenMade((names) => songFromParts(made, names))),
    openCopy: (id) => anew(() => openCopy(id)),
    openFile: (file) => anew(() => openFile(file)),
    openAnyway: () => inTurn(openAnyway),
    crossOut: (id) => show({ crossedOut: [...state.crossedOut.filter((one) => one !== id), id] }),
    putBack: (id) => show({ crossedOut: state.crossedOut.filter((one) => one !== id) }),
    deleteCrossedOut: () => anew(deleteCrossedOut),
    dismiss,
  };
}
