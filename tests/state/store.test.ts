import { describe, expect, it } from 'vitest';
import { setTempo, setTitle } from '../../src/state/edits/song.ts';
import { createStore } from '../../src/state/store.ts';
import { project } from '../support/project.ts';

/** A store and how often it told of a change. */
function watchedStore() {
  const store = createStore(project());
  let told = 0;
  const end = store.subscribe(() => {
    told++;
  });
  return { store, end, told: () => told };
}

describe('a store', () => {
  it('gives the very same snapshot until something changes', () => {
    const { store } = watchedStore();
    const before = store.snapshot();
    expect(store.snapshot()).toBe(before);
    store.edit(setTitle('Other'), { label: 'title' });
    expect(store.snapshot()).not.toBe(before);
    expect(store.snapshot().song.title).toBe('Other');
    expect(store.snapshot().patterns).toBe(before.patterns);
  });

  it('tells its listeners once for every change, until they end', () => {
    const { store, end, told } = watchedStore();
    store.edit(setTitle('Other'), { label: 'title' });
    store.undo();
    store.redo();
    expect(told()).toBe(3);
    end();
    store.undo();
    expect(told()).toBe(3);
  });

  it('neither records nor tells an edit that returns its argument', () => {
    const { store, told } = watchedStore();
    const before = store.snapshot();
    store.edit(setTitle(before.song.title), { label: 'title' });
    expect(store.snapshot()).toBe(before);
    expect(store.undoLabel()).toBeUndefined();
    expect(told()).toBe(0);
  });

  it('says nothing when there is nothing to undo or redo', () => {
    const { store, told } = watchedStore();
    store.undo();
    store.redo();
    expect(told()).toBe(0);
  });

  it('goes back to the very project before an edit, and names what it would undo and redo', () => {
    const { store } = watchedStore();
    const before = store.snapshot();
    store.edit(setTitle('Other'), { label: 'title' });
    store.edit(setTempo(90), { label: 'tempo' });
    expect([store.undoLabel(), store.redoLabel()]).toEqual(['tempo', undefined]);
    store.undo();
    expect([store.undoLabel(), store.redoLabel()]).toEqual(['title', 'tempo']);
    store.undo();
    expect(store.snapshot()).toBe(before);
    expect([store.undoLabel(), store.redoLabel()]).toEqual([undefined, 'title']);
  });

  it('undoes a gesture as one', () => {
    const { store } = watchedStore();
    const before = store.snapshot();
    for (const title of ['O', 'Ot', 'Oth'])
      store.edit(setTitle(title), { label: 'title', gesture: 'title' });
    store.undo();
    expect(store.snapshot()).toBe(before);
  });

  it('undoes by itself what comes after the end of a gesture', () => {
    const { store, told } = watchedStore();
    store.edit(setTitle('One'), { label: 'title', gesture: 'title' });
    const before = store.snapshot();
    const calls = told();
    store.endGesture();
    expect(told()).toBe(calls);
    store.edit(setTitle('Two'), { label: 'title', gesture: 'title' });
    store.undo();
    expect(store.snapshot()).toBe(before);
  });

  it('holds frozen data, so that nothing but an edit changes it', () => {
    const { store } = watchedStore();
    store.edit(setTitle('Other'), { label: 'title' });
    const { song, patterns } = store.snapshot();
    for (const part of [song, song.sections, song.tempo, patterns[0], patterns[0]?.left])
      expect(Object.isFrozen(part)).toBe(true);
  });

  it('cannot undo one project into another that was opened after it', () => {
    const { store, told } = watchedStore();
    store.edit(setTitle('Other'), { label: 'title' });
    const opened = project({ id: 'opened' });
    store.replace(opened);
    expect(store.snapshot()).toBe(opened);
    store.undo();
    expect(store.snapshot()).toBe(opened);
    expect(store.undoLabel()).toBeUndefined();
    expect(told()).toBe(2);
  });
});
