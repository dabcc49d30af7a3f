import { deleteDB, openDB } from 'idb';
import { afterEach, describe, expect, it } from 'vitest';
import { encodeProject } from '../../src/formats/projectFile.ts';
import { setTitle } from '../../src/state/edits/song.ts';
import { lastWordsIn } from '../../src/state/lastWords.ts';
import { openStorage, type Storage } from '../../src/state/storage.ts';
import { errorOf, valueOf } from '../support/music.ts';
import { project } from '../support/project.ts';
import { takeRecord } from '../support/takeRecords.ts';

const NAME = 'vampwright-test';

const open: Storage[] = [];

async function opened(): Promise<Storage> {
  const storage = valueOf(await openStorage(NAME));
  open.push(storage);
  return storage;
}

afterEach(async () => {
  for (const storage of open.splice(0)) storage.close();
  localStorage.clear();
  await deleteDB(NAME);
});

describe('the storage', () => {
  it('gives back the very project that was saved, also after it was closed', async () => {
    const before = await opened();
    expect(await before.saveProject(project(), 1)).toEqual({ ok: true, value: undefined });
    before.close();
    const after = await opened();
    expect(await after.openProject('test project')).toEqual({ ok: true, value: project() });
  });

  it('has nothing at first', async () => {
    const storage = await opened();
    expect(await storage.lastProject()).toEqual({ ok: true, value: undefined });
    expect(await storage.openProject('nowhere')).toEqual({ ok: true, value: undefined });
    expect(await storage.recording('nowhere')).toEqual({ ok: true, value: undefined });
    expect(await storage.projects()).toEqual({ ok: true, value: [] });
  });

  it('remembers which project was saved last, whatever the clock says', async () => {
    const storage = await opened();
    const [one, two] = [project({ id: 'one' }), project({ id: 'two' })];
    await Promise.all([storage.saveProject(one, 2), storage.saveProject(two, 1)]);
    expect(await storage.lastProject()).toEqual({ ok: true, value: two });
    expect(valueOf(await storage.projects()).map(({ id }) => id)).toEqual(['one', 'two']);
  });

  it('writes in the order of the calls, the last one standing', async () => {
    const storage = await opened();
    const titles = ['a', 'b', 'c', 'd'];
    await Promise.all(titles.map((title, i) => storage.saveProject(setTitle(title)(project()), i)));
    expect(await storage.projects()).toEqual({
      ok: true,
      value: [{ id: 'test project', title: 'd', savedAtMs: 3 }],
    });
  });

  it('lets a project go, and then opens none', async () => {
    const storage = await opened();
    await storage.saveProject(project(), 1);
    await storage.deleteProject('test project');
    expect(await storage.projects()).toEqual({ ok: true, value: [] });
    expect(await storage.lastProject()).toEqual({ ok: true, value: undefined });
  });

  it('keeps recordings as the files they are', async () => {
    const storage = await opened();
    const file = new Blob([new Uint8Array([1, 2, 3])], { type: 'audio/mpeg' });
    await storage.saveRecording('take', file);
    const kept = valueOf(await storage.recording('take'));
    expect(kept?.type).toBe('audio/mpeg');
    expect([...new Uint8Array((await kept?.arrayBuffer()) ?? new ArrayBuffer(0))]).toEqual([
      1, 2, 3,
    ]);
    await storage.deleteRecording('take');
    expect(await storage.recording('take')).toEqual({ ok: true, value: undefined });
  });

  it('hands out the whole text of a project that cannot be read', async () => {
    const storage = await opened();
    await storage.saveProject(project(), 1);
    const db = await openDB(NAME);
    const row: { text: string } = await db.get('projects', 'test project');
    const broken = row.text.replace('"bpm": 120', '"bpm": "fast"');
    await db.put('projects', { ...row, text: broken }, 'test project');
    db.close();
    expect(errorOf(await storage.lastProject())).toEqual({
      kind: 'unreadable',
      title: 'Test song',
      text: broken,
      error: {
        kind: 'wrong-value',
        path: 'song.tempo.bpm',
        expected: 'number',
        found: '"fast"',
      },
    });
  });
});

describe('the takes of a song', () => {
  const NONE: ReadonlySet<string> = new Set();
  const one = { ...takeRecord({ atMs: 1 }), id: 'one' };
  const two = { ...takeRecord({ atMs: 2, level: 3 }), id: 'two' };

  async function withSongs(...ids: string[]): Promise<Storage> {
    const storage = await opened();
    for (const id of ids) await storage.saveProject(project({ id }), 1);
    return storage;
  }

  it('are read as they were written, also after the storage was closed, and by song', async () => {
    const before = await withSongs('song', 'song-2');
    expect(await before.saveTakes('song', [one])).toEqual({ ok: true, value: true });
    await before.saveTakes('song-2', [two]);
    before.close();
    const after = await opened();
    expect(await after.takes('song', NONE)).toEqual({
      ok: true,
      value: { ids: ['one'], takes: [one] },
    });
    expect(valueOf(await after.takes('song-2', NONE)).takes).toEqual([two]);
  });

  it('are read but the known ones', async () => {
    const storage = await withSongs('song');
    await storage.saveTakes('song', [one, two]);
    expect(valueOf(await storage.takes('song', new Set(['one'])))).toEqual({
      ids: ['one', 'two'],
      takes: [two],
    });
  });

  it('are deleted one by one', async () => {
    const storage = await withSongs('song');
    await storage.saveTakes('song', [one, two]);
    await storage.deleteTakes('song', ['one', 'nowhere']);
    expect(valueOf(await storage.takes('song', NONE)).takes).toEqual([two]);
  });

  it('go with the song, so that a later one under its id has none', async () => {
    const storage = await withSongs('song', 'other');
    await storage.saveTakes('song', [one]);
    await storage.saveTakes('other', [two]);
    await storage.deleteProject('song');
    expect(await storage.saveTakes('song', [one])).toEqual({ ok: true, value: false });
    await storage.saveProject(project({ id: 'song' }), 2);
    expect(valueOf(await storage.takes('song', NONE)).ids).toEqual([]);
    expect(valueOf(await storage.takes('other', NONE)).ids).toEqual(['two']);
  });

  it('are left out where they cannot be read, but not deleted', async () => {
    const storage = await withSongs('song');
    await storage.saveTakes('song', [one]);
    const db = await openDB(NAME);
    await db.put('takes', { version: 9 }, ['song', 'later']);
    await db.put('takes', 'broken', ['song', 'broken']);
    const read = valueOf(await storage.takes('song', NONE));
    expect(read.takes).toEqual([one]);
    expect(await db.count('takes')).toBe(3);
    db.close();
  });
});

describe('what a page left unsaved', () => {
  const left = project({ id: 'left' });
  const row = { id: 'left', title: 'Left', savedAtMs: 10, text: encodeProject(left) };

  it('is taken up at the next opening, once', async () => {
    lastWordsIn(localStorage, NAME).write(row);
    expect(await (await opened()).lastProject()).toEqual({ ok: true, value: left });
    expect(lastWordsIn(localStorage, NAME).read()).toBeUndefined();
  });

  it('is dropped where something newer was saved under its id since', async () => {
    const newer = setTitle('Newer')(left);
    await (await opened()).saveProject(newer, 11);
    lastWordsIn(localStorage, NAME).write(row);
    expect(await (await opened()).lastProject()).toEqual({ ok: true, value: newer });
    expect(lastWordsIn(localStorage, NAME).read()).toBeUndefined();
  });

  it('is nothing once the write is known to be done', async () => {
    const storage = await opened();
    const writing = storage.saveBeforeLeaving(left, 10);
    expect(lastWordsIn(localStorage, NAME).read()).toMatchObject({ id: 'left', savedAtMs: 10 });
    expect(await writing).toEqual({ ok: true, value: undefined });
    expect(lastWordsIn(localStorage, NAME).read()).toBeUndefined();
  });
});

describe('what the browser refuses', () => {
  it('is a storage that a later release has changed', async () => {
    (await openDB(NAME, 99)).close();
    expect(errorOf(await openStorage(NAME)).kind).toBe('newer-version');
  });

  it('is a write after a later release has taken the storage over', async () => {
    const storage = await opened();
    (await openDB(NAME, 99)).close();
    expect(errorOf(await storage.saveProject(project(), 1)).kind).toBe('failed');
    expect(errorOf(await storage.lastProject()).kind).toBe('failed');
  });
});

/** A page of its own, as a frame's document: edits as fast as edits can come, and then it goes. */
const EDITING_PAGE = `<script type="module">
  import { createAutosave, pageLife } from '/src/state/autosave.ts';
  import { encodeProject } from '../../src/formats/projectFile.ts';
import { setTitle } from '/src/state/edits/song.ts';
  import { openStorage } from '/src/state/storage.ts';
  import { createStore } from '/src/state/store.ts';

  const { project, leave, gone } = parent.editingPage;
  addEventListener('unload', gone);
  const storage = await openStorage('${NAME}');
  const store = createStore(project);
  createAutosave(store, storage, pageLife(window));
  for (const title of ['a', 'b', 'c', 'd', 'e']) store.edit(setTitle(title), { label: 'title' });
  leave();
</script>`;

/** Has the page run, and end by `leave` right after its last edit; comes back when it is gone. */
function editAndLeave(leave: (frame: HTMLIFrameElement) => void): Promise<void> {
  const frame = document.createElement('iframe');
  frame.srcdoc = EDITING_PAGE;
  return new Promise((resolve) => {
    const editingPage = { project: project(), leave: () => leave(frame), gone: resolve };
    Object.assign(window, { editingPage });
    document.body.append(frame);
  });
}

describe('a page that goes right after an edit', () => {
  it.each<[string, (frame: HTMLIFrameElement) => void]>([
    ['closed', (frame) => frame.remove()],
    ['at another address', (frame) => frame.contentWindow?.location.replace('about:blank')],
    ['loaded again', (frame) => frame.contentWindow?.location.reload()],
  ])('has saved it: %s', async (_, leave) => {
    await editAndLeave(leave);
    const storage = await opened();
    expect(valueOf(await storage.lastProject())?.song.title).toBe('e');
  });
});
