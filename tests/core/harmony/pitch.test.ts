import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chromaOf,
  formatPitchClass,
  keyNumberOf,
  type Pitch,
  pitchClassOf,
  semitonesOf,
  transpose,
  transposePitchClass,
} from '../../../src/core/harmony/pitch.ts';
import { ROOTS } from '../../support/chords.ts';
import { pitchClass } from '../../support/music.ts';

/** `pitch('C4')`. */
function pitch(text: string): Pitch {
  return { ...pitchClass(text.slice(0, -1)), octave: Number(text.slice(-1)) };
}

describe('key numbers', () => {
  // docs/sources.md#tuning
  it.each([
    ['A0', 21],
    ['B0', 23],
    ['C1', 24],
    ['E1', 28],
    ['F1', 29],
    ['G1', 31],
    ['A1', 33],
    ['C2', 36],
    ['D2', 38],
    ['E2', 40],
    ['G2', 43],
    ['A2', 45],
    ['E3', 52],
    ['G3', 55],
    ['B3', 59],
    ['C4', 60],
    ['E4', 64],
    ['G4', 67],
    ['C5', 72],
    ['A5', 81],
    ['C6', 84],
    ['C7', 96],
    ['A7', 105],
    ['C8', 108],
  ])('%s is key %i', (text, key) => expect(keyNumberOf(pitch(text))).toBe(key));

  it('follow the letter: B♯3 is middle C and C♭4 the key below it', () => {
    expect(keyNumberOf(pitch('B♯3'))).toBe(60);
    expect(keyNumberOf(pitch('C♭4'))).toBe(59);
    expect(keyNumberOf(pitch('F♯♯4'))).toBe(67);
  });
});

describe('pitch classes', () => {
  it.each([
    ['B♭', 'B', -1],
    ['Bb', 'B', -1],
    ['F#', 'F', 1],
    ['Fx', 'F', 2],
    ['F##', 'F', 2],
    ['E𝄫', 'E', -2],
    ['C', 'C', 0],
  ])('%s is read', (text, letter, alteration) =>
    expect(pitchClassOf(text)).toEqual({ letter, alteration }),
  );

  it.each(['', 'H', 'c', 'C♮', 'B♭♭♭', 'C#b', '♭'])('“%s” is none', (text) =>
    expect(pitchClassOf(text)).toBeUndefined(),
  );

  it('are printed as they are read, all 35 of them', () =>
    expect(ROOTS.map((root) => pitchClassOf(formatPitchClass(root)))).toEqual(ROOTS));

  it('have a place among the twelve', () => {
    expect(['C', 'B♯', 'C♭', 'D♭', 'C♯', 'A♯♯'].map((t) => chromaOf(pitchClass(t)))).toEqual([
      0, 0, 11, 1, 1, 11,
    ]);
  });
});

describe('intervals', () => {
  it.each([
    ['C', '3M', 'E'],
    ['B', '3m', 'D'],
    ['F', '4A', 'B'],
    ['E♭', '7m', 'D♭'],
    ['G♯', '3M', 'B♯'],
    ['C', '-2m', 'B'],
    ['B♭♭', '5d', 'F♭♭'],
  ])('from %s by %s lead to %s, spelled by their number (computed)', (from, interval, to) =>
    expect(formatPitchClass(transposePitchClass(pitchClass(from), interval))).toBe(to),
  );

  it('that do not exist are a program error', () => {
    expect(() => semitonesOf('3P')).toThrow('3P');
    expect(() => transposePitchClass(pitchClass('C'), 'foo')).toThrow('foo');
    expect(() => transpose(pitch('C4'), 'foo')).toThrow('foo');
  });

  it('move a key number by their size', () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...ROOTS),
        fc.integer({ min: 0, max: 8 }),
        fc.constantFrom('1P', '2m', '3M', '4A', '5d', '7m', '9M', '-3m', '-5P', '8P'),
        (root, octave, interval) => {
          const from = { ...root, octave };
          const moved = keyNumberOf(transpose(from, interval));
          expect(moved - keyNumberOf(from)).toBe(semitonesOf(interval));
        },
      ),
    ));
});
