import { describe, expect, it } from 'vitest';
import { notesToSound } from '../../src/audio/notesToSound.ts';
import type { DueNote, Span } from '../../src/audio/pass.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import { timedNote } from '../support/sound.ts';

const SPAN: Span = {
  pass: { notes: [], leadInSec: 0, lengthSec: 10 },
  passIndex: 0,
  originSec: 0,
  fromSec: 0,
};

const HORIZON = 5;

function due(atSec: number, parts: Partial<TimedNote> = {}): DueNote {
  return { note: timedNote('right', atSec, parts), atSec, span: SPAN };
}

/** Everything before the horizon has been handed over, the rest waits. */
function old(...notes: readonly DueNote[]) {
  return notes.map((note) => ({ ...note, isWaiting: note.atSec >= HORIZON }));
}

const times = (before: readonly DueNote[], revised: readonly DueNote[]) =>
  notesToSound(old(...before), revised, HORIZON).map((note) => note.atSec);

describe('notes still to sound', () => {
  it('are all from the horizon on and none before it, where nothing moved', () => {
    const notes = [4, 4.9, 5, 5.1, 6].map((sec) => due(sec));
    expect(times(notes, notes)).toEqual([5, 5.1, 6]);
  });

  it('do not repeat a note that moved over the horizon after it was handed over', () => {
    expect(times([due(4.95)], [due(5.05)])).toEqual([]);
  });

  it('keep a note that moved to before the horizon while it waited', () => {
    expect(times([due(5.05)], [due(4.95)])).toEqual([4.95]);
  });

  it('tell keys and parts apart', () => {
    expect(times([due(4.95)], [due(5.05, { keyNumber: 61 })])).toEqual([5.05]);
    expect(times([due(4.95)], [due(5.05, { part: 'left' })])).toEqual([5.05]);
  });

  it('take a note that is added near one that sounded for a new one', () => {
    expect(times([due(4.95)], [due(4.95), due(5.05)])).toEqual([5.05]);
  });

  it('pair repeated notes with their nearest', () => {
    expect(
      times(
        [4.8, 4.95, 5.1].map((s) => due(s)),
        [4.8, 5.01, 5.16].map((s) => due(s)),
      ),
    ).toEqual([5.16]);
  });

  it('take notes of one hit for the same sooner than nearer ones of another', () => {
    const before = [due(4.98, { patternTick: 240 })];
    const revised = [due(5.01, { patternTick: 120 }), due(5.1, { patternTick: 240 })];
    expect(times(before, revised)).toEqual([5.01]);
  });

  it('leave what is further away than an edit moves it', () => {
    expect(times([due(4.9)], [due(5.1)])).toEqual([5.1]);
    const far = { patternTick: 240 };
    expect(times([due(4.8, far)], [due(5.1, far)])).toEqual([5.1]);
  });

  it('drop what the revision removed', () => {
    expect(times([due(4.9), due(5.1)], [])).toEqual([]);
  });
});
