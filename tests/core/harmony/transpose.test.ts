import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chordTones } from '../../../src/core/harmony/chord.ts';
import { formatChordSymbol } from '../../../src/core/harmony/chordSymbol.ts';
import { fifthsOf, type Key } from '../../../src/core/harmony/key.ts';
import {
  diatonicSevenths,
  diatonicTriads,
  secondaryDominants,
} from '../../../src/core/harmony/keyChords.ts';
import { formatNumeral, numeralOf } from '../../../src/core/harmony/numerals.ts';
import {
  formatPitchClass,
  semitonesOf,
  transposePitchClass,
} from '../../../src/core/harmony/pitch.ts';
import { scaleChordOf } from '../../../src/core/harmony/scaleDegree.ts';
import {
  intervalForSinger,
  transposeChord,
  transposeKey,
  transposeSong,
} from '../../../src/core/harmony/transpose.ts';
import { formatChart } from '../../../src/core/song/chart.ts';
import type { ChordSlot, Song } from '../../../src/core/song/song.ts';
import { anyChord } from '../../support/chords.ts';
import { anyKey, KEYS } from '../../support/keys.ts';
import {
  chord,
  keyNamed,
  majorKey,
  meter,
  minorKey,
  otherEnding,
  section,
  slots,
  song,
  withEndings,
} from '../../support/music.ts';

function songIn(key: Key, chart: string): Song {
  return song([section('verse', { slots: slots(chart) })], 'verse', { key });
}

function chartOf(moved: Song): string {
  return formatChart(moved.sections[0]!.slots, meter('4/4'));
}

function handsOf(moved: Song): ChordSlot['fixedKeys'] {
  return moved.sections[0]!.slots[0]!.fixedKeys;
}

function nameOf(key: Key): string {
  return `${formatPitchClass(key.tonic)} ${key.mode}`;
}

describe('transposing a song', () => {
  // Computed: every letter moves by the interval's number.
  it.each([
    ['C', '2M', 'D major', '| D / Em7 / | A7 | A7 / D/F♯ / | N.C. |'],
    ['C', '-2m', 'B major', '| B / C♯m7 / | F♯7 | F♯7 / B/D♯ / | N.C. |'],
    ['C', '2m', 'D♭ major', '| D♭ / E♭m7 / | A♭7 | A♭7 / D♭/F / | N.C. |'],
    ['C', '5d', 'G♭ major', '| G♭ / A♭m7 / | D♭7 | D♭7 / G♭/B♭ / | N.C. |'],
    ['C', '4A', 'F♯ major', '| F♯ / G♯m7 / | C♯7 | C♯7 / F♯/A♯ / | N.C. |'],
    ['C', 'to E♭', 'E♭ major', '| E♭ / Fm7 / | B♭7 | B♭7 / E♭/G / | N.C. |'],
    ['C', '2A', 'E♭ major', '| E♭ / Fm7 / | B♭7 | B♭7 / E♭/G / | N.C. |'],
    ['A minor', '3M', 'C♯ minor', '| E / F♯m7 / | B7 | B7 / E/G♯ / | N.C. |'],
  ])('from %s by %s leads to %s: %s', (key, by, newKey, chart) => {
    const to = by === 'to E♭' ? majorKey('E♭') : by;
    const moved = transposeSong(
      songIn(keyNamed(key), '| C / Dm7 / | G7 | G7 / C/E / | N.C. |'),
      to,
    );
    expect(nameOf(moved.key)).toBe(newKey);
    expect(chartOf(moved)).toBe(chart);
  });

  it('writes a key with more than seven signs as another: up a major third from E is A♭', () => {
    const moved = transposeSong(songIn(majorKey('E'), '| E | C♯m | F♯7 | B/D♯ |'), '3M');
    expect(nameOf(moved.key)).toBe('A♭ major');
    expect(chartOf(moved)).toBe('| A♭ | Fm | B♭7 | E♭/G |');
  });

  it('keeps the mode of the song when a key of the other mode is named', () =>
    expect(nameOf(transposeSong(songIn(minorKey('A'), '| Am |'), majorKey('G')).key)).toBe(
      'G minor',
    ));

  it('respells a root that would take three signs', () =>
    expect(chartOf(transposeSong(songIn(majorKey('E'), '| B♯♯ |'), '6M'))).toBe('| A♯ |'));

  it('moves the fixed hands, by the interval or the nearest way to the key', () => {
    const fixedKeys = { left: [36], right: [60, 64, 67] };
    const fixed: ChordSlot[] = [{ ...slots('| C |')[0]!, fixedKeys }];
    const base = song([section('verse', { slots: fixed })], 'verse');
    expect(handsOf(transposeSong(base, '-3m'))).toEqual({ left: [33], right: [57, 61, 64] });
    expect(handsOf(transposeSong(base, majorKey('A')))).toEqual({
      left: [33],
      right: [57, 61, 64],
    });
    expect(handsOf(transposeSong(base, '9M'))).toEqual({ left: [50], right: [74, 78, 81] });
    expect(handsOf(transposeSong(base, '-16M'))?.left).toEqual([22]);
  });

  it('moves the other endings of its playings', () => {
    const base = withEndings(songIn(majorKey('C'), '| C | G |'), { 0: otherEnding(1, '| F/A |') });
    const last = transposeSong(base, '2M').form[0]!.ending!;
    expect(formatChart(last.slots, meter('4/4'))).toBe('| G/B |');
    expect(last.replacesBars).toBe(1);
  });

  it('changes nothing else, and nothing at all in a song without chords', () => {
    const base = songIn(majorKey('C'), '| C |');
    const moved = transposeSong(base, '2M');
    expect({ ...moved, key: base.key, sections: base.sections }).toEqual(base);
    expect(transposeSong(song([], ''), '2M').sections).toEqual([]);
  });

  it('and back again gives the song that was there', () =>
    fc.assert(
      fc.property(
        anyKey(),
        fc.constantFrom('2m', '2M', '3m', '3M', '4P', '5P', '6M', '7m'),
        fc.array(anyChord(), { minLength: 1, maxLength: 5 }),
        (key, interval, chords) => {
          const there = { key, sections: [{ slots: chords.map((c) => ({ chord: c })) }] };
          const moved = transposeSong(there, interval);
          const back = transposeSong(moved, key);
          const sounds = (s: typeof there) =>
            s.sections[0]!.slots.map(({ chord: c }) => chordTones(c).map((t) => t.semitones));
          expect(back.key).toEqual(key);
          expect(sounds(back)).toEqual(sounds(there));
        },
      ),
    ));
});

const INTERVALS = ['2m', '2M', '3m', '3M', '4P', '5P', '6m', '-2M', '-3m', '-5P'];

describe('transposing commutes', () => {
  it('with chord notes', () =>
    fc.assert(
      fc.property(anyChord(), fc.constantFrom(...INTERVALS), (c, interval) => {
        const moved = chordTones(c).map((tone) => ({
          ...tone,
          pitchClass: transposePitchClass(tone.pitchClass, interval),
        }));
        expect(chordTones(transposeChord(c, interval))).toEqual(moved);
      }),
    ));

  it('with the chords of a key', () =>
    fc.assert(
      fc.property(anyKey(), fc.constantFrom(...INTERVALS), (key, interval) => {
        for (const chordsOf of [diatonicTriads, diatonicSevenths, secondaryDominants]) {
          const moved = chordsOf(key).map((c) => transposeChord(c.chord, interval));
          expect(chordsOf(transposeKey(key, interval)).map((c) => c.chord)).toEqual(moved);
        }
      }),
    ));

  it('with numerals and steps: they do not change', () =>
    fc.assert(
      fc.property(anyChord(), anyKey(), fc.constantFrom(...INTERVALS), (c, key, interval) => {
        const moved = transposeChord(c, interval);
        const movedKey = transposeKey(key, interval);
        expect(scaleChordOf(moved, movedKey)).toEqual(scaleChordOf(c, key));
        expect(formatNumeral(numeralOf(moved, movedKey))).toBe(formatNumeral(numeralOf(c, key)));
      }),
    ));
});

describe('for a singer', () => {
  it.each([
    ['C', 76, 72, '-3M', 'A♭ major'],
    ['C', 76, 74, '-2M', 'B♭ major'],
    ['D', 74, 77, '3m', 'F major'],
    ['A', 79, 76, '-3m', 'F♯ major'],
    ['A minor', 72, 73, '2m', 'B♭ minor'],
    ['C', 76, 62, '-9M', 'B♭ major'],
    ['C♭', 76, 76, '1P', 'C♭ major'],
  ])('in %s from key %i to key %i is %s, to %s (computed)', (key, tune, singer, interval) =>
    expect(intervalForSinger(keyNamed(key), tune, singer)).toBe(interval),
  );

  it('the tune’s highest note becomes the singer’s, in a key with at most seven signs', () => {
    for (const key of KEYS)
      for (let by = -24; by <= 24; by++) {
        const interval = intervalForSinger(key, 72, 72 + by);
        expect(semitonesOf(interval)).toBe(by);
        expect(Math.abs(fifthsOf(transposeKey(key, interval)))).toBeLessThanOrEqual(7);
      }
  });
});

it('prints a transposed symbol as the new key spells it', () =>
  expect(formatChordSymbol(transposeChord(chord('B♭m7♭5/A♭'), '2M'))).toBe('Cm7♭5/B♭'));
