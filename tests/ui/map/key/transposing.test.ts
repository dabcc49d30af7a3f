import { describe, expect, it } from 'vitest';
import {
  beginningAfter,
  type Move,
  moveTarget,
  noteNameIn,
  songBeginning,
} from '../../../../src/ui/map/key/transposing.ts';
import {
  keyName,
  keyNamed,
  majorKey,
  pitchClass,
  section,
  slots,
  song,
} from '../../../support/music.ts';

function leadsTo(move: Move, from: string): string {
  const to = moveTarget(move, keyNamed(from));
  return typeof to === 'string' ? to : keyName(to);
}

describe('where a move takes a song', () => {
  it.each<[string, Move, string]>([
    ['C', { kind: 'interval', direction: 'up', interval: '3m' }, '3m'],
    ['C', { kind: 'interval', direction: 'down', interval: '4P' }, '-4P'],
    ['A minor', { kind: 'key', tonic: pitchClass('F♯') }, 'F♯ minor'],
    // D5 is the tune's top, A4 the singer's: a fourth down, or the same key in any other octave.
    ['D', { kind: 'singer', tune: 74, singer: 69 }, 'A'],
    ['D', { kind: 'singer', tune: 74, singer: 57 }, 'A'],
    ['E', { kind: 'singer', tune: 76, singer: 75 }, 'E♭'],
    ['C', { kind: 'singer', tune: 72, singer: 72 }, 'C'],
  ])('from %s: %j leads to %s', (from, move, to) => expect(leadsTo(move, from)).toBe(to));
});

describe('how a song begins', () => {
  const verse = section('verse', { slots: slots('| D | N.C. | Bm7 / G / | A |') });
  const intro = section('intro', { slots: slots('| G |') });
  const ours = song([intro, verse], 'verse intro', { key: majorKey('D') });

  it('is told by the chords of the section that is played first', () =>
    expect(songBeginning(ours).chords.join(' ')).toBe('D Bm7 G A'));

  it('is known before the song is moved, and moves nothing', () => {
    const after = beginningAfter(ours, { kind: 'interval', direction: 'up', interval: '2m' });
    expect([keyName(after.key), after.chords.join(' ')]).toEqual(['E♭', 'E♭ Cm7 A♭ B♭']);
    expect(songBeginning(ours).chords[0]).toBe('D');
  });

  it('is told by eight chords at most, and by none in a song without chords', () => {
    const long = section('long', { slots: slots('| C D E F | G A B C | D E F G |') });
    expect(songBeginning(song([long], 'long')).chords).toHaveLength(8);
    expect(songBeginning(song([], '')).chords).toEqual([]);
  });
});

// Middle C is C4 = 60: docs/sources.md#tuning.
describe('the name of a note', () => {
  it.each([
    ['C', 60, 'C4'],
    ['C', 61, 'C♯4'],
    ['F', 61, 'D♭4'],
    ['D', 73, 'C♯5'],
    ['G♭', 71, 'C♭5'],
    ['C♯', 60, 'B♯3'],
    ['C', 71, 'B4'],
    ['F', 71, 'B4'],
  ])('in %s of key number %i is %s', (key, note, name) =>
    expect(noteNameIn(majorKey(key), note)).toBe(name),
  );
});
