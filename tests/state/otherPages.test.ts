import { expect, it } from 'vitest';
import type { Project } from '../../src/core/project.ts';
import { ok } from '../../src/core/result.ts';
import { createAutosave, type PageLife } from '../../src/state/autosave.ts';
import { setNotes, setTitle } from '../../src/state/edits/song.ts';
import { followOtherPages, type PageTalk, toldStorage } from '../../src/state/otherPages.ts';
import { createStore } from '../../src/state/store.ts';
import { memoryStorage } from '../support/memoryStorage.ts';
import { project } from '../support/project.ts';

/** Every page hears what the others tell. */
function pagesTalking(): () => PageTalk {
  const pages: ((savedId: Project['id']) => void)[][] = [];
  return () => {
    const own: (typeof pages)[number] = [];
    pages.push(own);
    return {
      tell: (savedId) => {
        for (const listener of pages.filter((each) => each !== own).flat()) listener(savedId);
      },
      onTold: (listener) => own.push(listener),
    };
  };
}

/** A page whose waits are over when `pass` is called. */
function fakeLife(): { readonly life: PageLife; readonly pass: () => void } {
  let waits: (() => void)[] = [];
  return {
    life: {
      later: (act) => {
        waits.push(act);
        return () => {
          waits = waits.filter((wait) => wait !== act);
        };
      },
      nowMs: () => 0,
      onLeaving: () => () => undefined,
    },
    pass: () => {
      for (const act of waits.splice(0)) act();
    },
  };
}

/** Lets what was begun come to its end. */
async function settle(): Promise<void> {
  for (let i = 0; i < 20; i++) await Promise.resolve();
}

/** Two pages of one device with the same song open, all of it saved. */
async function twoPages() {
  const kept = memoryStorage();
  const newTalk = pagesTalking();
  const newPage = () => {
    const talk = newTalk();
    const storage = toldStorage(kept, talk);
    const store = createStore(project());
    const { life, pass } = fakeLife();
    const autosave = createAutosave(store, ok(storage), life);
    followOtherPages(store, autosave, storage, talk);
    return { store, autosave, pass };
  };
  const [one, other] = [newPage(), newPage()];
  await settle();
  for (const page of [one, other]) page.pass();
  await settle();
  return { one, other, kept };
}

it('follows an edit that another page has saved, and keeps it when it is edited itself', async () => {
  const { one, other, kept } = await twoPages();
  one.store.edit(setTitle('From one page'), { label: 'title' });
  await settle();
  expect(other.store.snapshot().song.title).toBe('From one page');
  expect(other.autosave.status().kind).toBe('saved');
  other.store.edit(setNotes('from the other'), { label: 'notes' });
  other.pass();
  await settle();
  expect(one.store.snapshot().song).toMatchObject({
    title: 'From one page',
    notes: 'from the other',
  });
  expect(JSON.stringify(kept.rows.get('test project'))).toContain('from the other');
});

it('does not lose what it has not saved yet', async () => {
  const { one, other } = await twoPages();
  other.store.edit(setNotes('first'), { label: 'notes' });
  await settle();
  other.store.edit(setNotes('still being typed'), { label: 'notes' });
  one.store.edit(setTitle('Meanwhile'), { label: 'title' });
  await settle();
  expect(other.store.snapshot().song.notes).toBe('still being typed');
});

it('leaves another song alone', async () => {
  const { one, other } = await twoPages();
  const second = { ...project(), id: 'another song' };
  one.store.replace(second);
  await settle();
  expect(other.store.snapshot().id).toBe('test project');
});
