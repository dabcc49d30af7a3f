import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  gestureEnded,
  HISTORY_LIMIT,
  type History,
  historyFrom,
  record,
  redo,
  undo,
} from '../../src/state/history.ts';

/** A history after changes to these states, each named as its state, of one gesture where one is given. */
function after(states: readonly string[], gesture?: string): History<string> {
  return states.reduce(
    (history, state) => record(history, state, { label: state, ...(gesture ? { gesture } : {}) }),
    historyFrom('begin'),
  );
}

describe('a history', () => {
  it('goes back to the very states it came through, and forward again', () => {
    const states = fc.array(fc.string({ minLength: 1 }), { maxLength: 20 });
    fc.assert(
      fc.property(states, (names) => {
        const objects = names.map((name) => ({ name }));
        const begin = { name: 'begin' };
        let history = objects.reduce(
          (before, state) => record(before, state, { label: state.name }),
          historyFrom(begin),
        );
        for (const state of [begin, ...objects].toReversed()) {
          expect(history.present).toBe(state);
          history = undo(history);
        }
        for (const state of [begin, ...objects]) {
          expect(history.present).toBe(state);
          history = redo(history);
        }
      }),
    );
  });

  it('has nothing to undo or redo at its beginning', () => {
    const history = historyFrom('begin');
    expect(undo(history)).toBe(history);
    expect(redo(history)).toBe(history);
  });

  it('names what undo takes back and what redo brings back by the change itself', () => {
    const history = undo(after(['first', 'second']));
    expect(history.past.at(-1)?.label).toBe('first');
    expect(history.future.at(-1)?.label).toBe('second');
  });

  it('forgets what could be redone when something else is done', () => {
    expect(record(undo(after(['first'])), 'other', { label: 'other' }).future).toEqual([]);
  });

  it('records nothing where the state is the very same', () => {
    const history = undo(after(['first', 'second']));
    expect(record(history, 'first', { label: 'nothing' })).toBe(history);
  });

  it('keeps the latest changes up to its limit', () => {
    const states = Array.from({ length: HISTORY_LIMIT + 3 }, (_, i) => String(i));
    const history = after(states);
    expect(history.past).toHaveLength(HISTORY_LIMIT);
    expect(history.past[0]).toEqual({ value: '2', label: '3' });
  });
});

describe('a gesture', () => {
  it('is one entry, named as its first change', () => {
    expect(after(['a', 'b', 'c'], 'drag').past).toEqual([{ value: 'begin', label: 'a' }]);
  });

  it('ends where another gesture or a change without one comes', () => {
    const typed = record(after(['a', 'b'], 'drag'), 'c', { label: 'c', gesture: 'typing' });
    const plain = record(typed, 'd', { label: 'd' });
    expect(plain.past.map(({ label }) => label)).toEqual(['a', 'c', 'd']);
  });

  it('does not go on after an undo, even under the same name', () => {
    const undone = undo(record(after(['a'], 'drag'), 'b', { label: 'b' }));
    const history = record(undone, 'c', { label: 'c', gesture: 'drag' });
    expect(history.past.map(({ value }) => value)).toEqual(['begin', 'a']);
  });

  it('does not go on once it was ended', () => {
    const typed = record(gestureEnded(after(['a', 'b'], 'drag')), 'c', {
      label: 'c',
      gesture: 'drag',
    });
    expect(typed.past.map(({ value }) => value)).toEqual(['begin', 'b']);
  });

  it('leaves nothing to undo where it leads back to where it began, and can then go on', () => {
    const back = record(after(['a', 'b'], 'drag'), 'begin', { label: 'c', gesture: 'drag' });
    expect(back.past).toEqual([]);
    const on = record(back, 'd', { label: 'd', gesture: 'drag' });
    expect(on.past).toEqual([{ value: 'begin', label: 'd' }]);
  });
});
