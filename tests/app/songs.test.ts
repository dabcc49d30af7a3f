import { describe, expect, it } from 'vitest';
import { createSongs, type SongFile } from '../../src/app/songs.ts';
import type { Project } from '../../src/core/project.ts';
import { err, ok } from '../../src/core/result.ts';
import { projectFaults } from '../../src/formats/projectFaults.ts';
import { encodeProject, PROJECT_FORMAT } from '../../src/formats/projectFile.ts';
import { setTitle } from '../../src/state/edits/song.ts';
import type { StorageError } from '../../src/state/storage.ts';
import { createStore } from '../../src/state/store.ts';
import { memoryStorage } from '../support/memoryStorage.ts';
import { project } from '../support/project.ts';

const FULL: StorageError = { kind: 'full', reason: 'QuotaExceededError' };

const first = titled('First', { id: 'song-1' });
const second = titled('Second', { id: 'song-2' });

function titled(title: string, parts: Partial<Project> = {}): Project {
  return setTitle(title)(project(parts));
}

function file(name: string, text: string): SongFile {
  return { name, text: async () => text };
}

/** Songs of a storage that keeps `kept`, the last one newest, while `open` lies open. */
async function songsWith(open: Project, ...kept: readonly Project[]) {
  const storage = memoryStorage();
  let nowMs = 0;
  for (const each of kept) await storage.saveProject(each, ++nowMs);
  const store = createStore(open);
  const events: string[] = [];
  const songs = createSongs({
    store,
    storage: ok(storage),
    playback: { stop: () => events.push('stop') },
    nowMs: () => ++nowMs,
    onOpened: () => events.push(`opened ${store.snapshot().song.title}`),
    onDeleted: (id) => events.push(`deleted ${id}`),
  });
  const keptTitles = () => [...storage.rows.values()].map(({ title }) => title);
  return { songs, store, storage, events, keptTitles };
}

describe('opening', () => {
  it('lists the kept songs, newest first', async () => {
    const { songs } = await songsWith(first, first, second);
    await songs.refresh();
    expect(songs.state().kept.map(({ title }) => title)).toEqual(['Second', 'First']);
  });

  it('keeps the open song as it is before another is opened, and stops the sound', async () => {
    const { songs, store, storage, events } = await songsWith(first, first, second);
    store.edit(setTitle('First, changed'), { label: 'title' });
    expect(await songs.open('song-2')).toBe(true);
    expect(store.snapshot()).toEqual(second);
    expect(store.undoLabel()).toBeUndefined();
    expect(storage.rows.get('song-1')?.title).toBe('First, changed');
    expect(events).toEqual(['stop', 'opened Second']);
  });

  it('leaves everything as it is where the open song is chosen', async () => {
    const { songs, events } = await songsWith(first, first);
    expect(await songs.open('song-1')).toBe(true);
    expect(events).toEqual([]);
  });

  it('opens nothing while the open song cannot be kept, unless it is to be lost', async () => {
    const { songs, store, storage } = await songsWith(first, second);
    const read = storage.openProject;
    Object.assign(storage, {
      openProject: async (id: string) => {
        const found = await read(id);
        storage.failure = FULL;
        return found;
      },
    });
    expect(await songs.open('song-2')).toBe(false);
    expect(store.snapshot()).toEqual(first);
    expect(songs.state().problem).toEqual({ kind: 'open-song-not-kept', error: FULL });
    expect(await songs.openAnyway()).toBe(true);
    expect(store.snapshot()).toEqual(second);
    expect(songs.state().problem).toBeUndefined();
  });

  it('forgets what could not be opened once the problem is put away', async () => {
    const { songs, store, storage } = await songsWith(first);
    storage.failure = FULL;
    await songs.openNew();
    songs.dismiss();
    expect(await songs.openAnyway()).toBe(false);
    expect(store.snapshot()).toEqual(first);
  });

  it('makes no song while the ids that are taken are not known', async () => {
    const { songs, store, storage, keptTitles } = await songsWith(first, first, second);
    Object.assign(storage, { projects: async () => err(FULL) });
    expect(await songs.openNew()).toBe(false);
    expect(songs.state().problem).toEqual({ kind: 'not-listed', error: FULL });
    songs.crossOut('song-1');
    await songs.deleteCrossedOut();
    expect(store.snapshot()).toEqual(first);
    expect(keptTitles()).toEqual(['First', 'Second']);
  });

  it('says that a song was deleted meanwhile', async () => {
    const { songs, store } = await songsWith(first, first);
    expect(await songs.open('song-7')).toBe(false);
    expect(songs.state().problem).toEqual({ kind: 'gone' });
    expect(store.snapshot()).toEqual(first);
  });

  it('hands out the text of a kept song that can be read no more', async () => {
    const { songs, store, storage } = await songsWith(first, first);
    storage.rows.set('x', { id: 'x', title: 'Torn', savedAtMs: 9, text: '{' });
    expect(await songs.open('x')).toBe(false);
    expect(songs.state().problem).toMatchObject({ kind: 'unreadable', title: 'Torn', text: '{' });
    expect(store.snapshot()).toEqual(first);
  });

  it('carries out what is asked at once one after the other', async () => {
    const { songs, store, keptTitles } = await songsWith(first, first, second);
    await Promise.all([songs.open('song-2'), songs.openNew(), songs.open('song-1')]);
    expect(store.snapshot().id).toBe('song-1');
    expect(keptTitles()).toEqual(['First', 'Second', 'New song']);
  });
});

describe('a new song', () => {
  it('is sound, has one verse, and gets an id and a title that no song has', async () => {
    const { songs, store } = await songsWith(titled('New song', { id: 'song-2' }), first);
    await songs.openNew();
    const made = store.snapshot();
    expect([made.id, made.song.title]).toEqual(['song-3', 'New song 2']);
    expect(made.song.sections.map(({ name }) => name)).toEqual(['Verse']);
    expect(projectFaults(made)).toEqual([]);
  });
});

describe('a copy', () => {
  it('is the song under an id and a title of its own, open instead of it', async () => {
    const { songs, store, keptTitles } = await songsWith(first, first, second);
    await songs.openCopy('song-2');
    expect(store.snapshot()).toEqual(titled('Second 2', { id: 'song-3' }));
    expect(keptTitles()).toEqual(['First', 'Second']);
  });

  it('of the open song has its latest changes', async () => {
    const { songs, store } = await songsWith(first, first);
    store.edit(setTitle('Changed'), { label: 'title' });
    await songs.openCopy('song-1');
    expect(store.snapshot()).toEqual(titled('Changed 2', { id: 'song-2' }));
  });
});

describe('a song file', () => {
  it('is opened as it was written', async () => {
    const { songs, store } = await songsWith(first, first);
    expect(await songs.openFile(file('Second.json', encodeProject(second)))).toBe(true);
    expect(store.snapshot()).toEqual(second);
  });

  it('gets a new id where a kept song has its id, so that none is overwritten', async () => {
    const { songs, store, storage } = await songsWith(first, first, second);
    const other = titled('Another', { id: 'song-2' });
    await songs.openFile(file('Another.json', encodeProject(other)));
    expect(store.snapshot()).toEqual({ ...other, id: 'song-3' });
    expect(storage.rows.get('song-2')?.title).toBe('Second');
  });

  it.each([
    ['that is no JSON', 'a song', { kind: 'not-json' }],
    ['of another kind', '{}', { kind: 'not-a-project' }],
    ['with a wrong value', wrongTempo(), { kind: 'wrong-value', path: 'song.tempo.bpm' }],
  ])('%s is refused with the place, and the open song untouched', async (_, text, error) => {
    const { songs, store } = await songsWith(first, first);
    expect(await songs.openFile(file('x.json', text))).toBe(false);
    expect(songs.state().problem).toMatchObject({
      kind: 'no-song-file',
      fileName: 'x.json',
      error,
    });
    expect(store.snapshot()).toEqual(first);
  });

  it('that the browser cannot read is said so', async () => {
    const { songs } = await songsWith(first, first);
    const gone = { name: 'x.json', text: () => Promise.reject(new Error('not found')) };
    await songs.openFile(gone);
    expect(songs.state().problem).toEqual({
      kind: 'file-not-read',
      fileName: 'x.json',
      reason: 'not found',
    });
  });
});

function wrongTempo(): string {
  const { song, ...rest } = first;
  const tempo = { ...song.tempo, bpm: 'fast' };
  return JSON.stringify({
    format: PROJECT_FORMAT,
    version: 1,
    project: { ...rest, song: { ...song, tempo } },
  });
}

describe('deleting', () => {
  it('waits until the crossed-out songs are really to go, and can be taken back', async () => {
    const { songs, keptTitles } = await songsWith(first, first, second);
    songs.crossOut('song-2');
    songs.crossOut('song-1');
    songs.putBack('song-1');
    expect(songs.state().crossedOut).toEqual(['song-2']);
    expect(keptTitles()).toEqual(['First', 'Second']);
    await songs.deleteCrossedOut();
    expect(keptTitles()).toEqual(['First']);
    expect(songs.state()).toEqual({
      kept: [{ id: 'song-1', title: 'First', savedAtMs: 1 }],
      crossedOut: [],
    });
  });

  it('of the open song opens the newest other that can be read', async () => {
    const { songs, store, storage, events, keptTitles } = await songsWith(second, first, second);
    storage.rows.set('x', { id: 'x', title: 'Torn', savedAtMs: 9, text: '{' });
    songs.crossOut('song-2');
    await songs.deleteCrossedOut();
    expect(store.snapshot()).toEqual(first);
    expect(keptTitles()).toEqual(['First', 'Torn']);
    expect(events).toEqual(['stop', 'opened First', 'deleted song-2']);
  });

  it('of the last song leaves a new one under another id', async () => {
    const { songs, store, keptTitles } = await songsWith(first, first);
    songs.crossOut('song-1');
    await songs.deleteCrossedOut();
    expect([store.snapshot().id, store.snapshot().song.title]).toEqual(['song-2', 'New song']);
    expect(keptTitles()).toEqual([]);
  });

  it('says where it failed', async () => {
    const { songs, storage } = await songsWith(first, first, second);
    songs.crossOut('song-2');
    Object.assign(storage, { deleteProject: async () => err(FULL) });
    await songs.deleteCrossedOut();
    expect(songs.state().problem).toEqual({ kind: 'not-deleted', error: FULL });
    expect(songs.state().kept).toHaveLength(2);
  });
});

it('says that nothing is kept where the browser has no storage', async () => {
  const unavailable: StorageError = { kind: 'unavailable', reason: 'SecurityError' };
  const store = createStore(first);
  const songs = createSongs({
    store,
    storage: err(unavailable),
    playback: { stop: () => undefined },
    nowMs: () => 0,
    onOpened: () => undefined,
    onDeleted: () => undefined,
  });
  await songs.refresh();
  expect(songs.state()).toMatchObject({
    kept: [],
    problem: { kind: 'not-listed', error: unavailable },
  });
  expect(await songs.openNew()).toBe(false);
  expect(store.snapshot()).toEqual(first);
  expect(songs.state().problem?.kind).toBe('open-song-not-kept');
});
