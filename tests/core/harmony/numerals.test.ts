import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatChordSymbol } from '../../../src/core/harmony/chordSymbol.ts';
import { parseChordText } from '../../../src/core/harmony/chordText.ts';
import { formatDegreeNumber, parseDegreeNumber } from '../../../src/core/harmony/degreeNumbers.ts';
import type { Key } from '../../../src/core/harmony/key.ts';
import {
  chordOfNumeral,
  formatNumeral,
  numeralOf,
  parseNumeral,
} from '../../../src/core/harmony/numerals.ts';
import {
  chordInKey,
  DEGREES,
  type ScaleChord,
  scaleChordOf,
} from '../../../src/core/harmony/scaleDegree.ts';
import { anyChord, QUALITIES, TENSION_SETS } from '../../support/chords.ts';
import { anyKey, KEYS } from '../../support/keys.ts';
import {
  chord,
  errorOf,
  keyNamed,
  majorKey,
  minorKey,
  pitchClass,
  valueOf,
} from '../../support/music.ts';

const C = majorKey('C');
const CM = minorKey('C');

function symbolOf(text: string, key: Key): string {
  return formatChordSymbol(valueOf(parseChordText(text, key)));
}

describe('Roman numerals', () => {
  // Chords computed from the scales (docs/sources.md#key-signatures); numerals common practice.
  it.each([
    ['C', 'I', 'C'],
    ['C', 'ii7', 'Dm7'],
    ['C', 'V7', 'G7'],
    ['C', 'V7/vi', 'E7'],
    ['C', 'V7/ii', 'A7'],
    ['C', 'ii7/IV', 'Gm7'],
    ['C', 'iiø7/vi', 'Bm7♭5'],
    ['C', 'vii°7/V', 'F♯dim7'],
    ['C', 'V7/V/♯4', 'D7/F♯'],
    ['C', '♭VII', 'B♭'],
    ['C', '♭II7', 'D♭7'],
    ['C', '♯iv°7', 'F♯dim7'],
    ['C', 'iv', 'Fm'],
    ['C', 'viiø7', 'Bm7♭5'],
    ['C', 'IVmaj7', 'Fmaj7'],
    ['C', 'I/3', 'C/E'],
    ['C', 'Vsus4', 'Gsus4'],
    ['C', 'I6/9', 'C6/9'],
    ['C', 'I5', 'C5'],
    ['C minor', 'i', 'Cm'],
    ['C minor', 'III+', 'E♭+'],
    ['C minor', 'iMaj7', 'CmMaj7'],
    ['C minor', 'VI', 'A♭'],
    ['C minor', 'VII', 'B♭'],
    ['C minor', 'vii°7', 'Bdim7'],
    ['C minor', 'viø7', 'Am7♭5'],
    ['C minor', '♭vii°', 'B♭dim'],
    ['C minor', 'V7/iv', 'C7'],
    ['C minor', 'V/♯7', 'G/B'],
    ['E♭', 'V7/iii', 'D7'],
    ['F♯', 'V7/iii', 'E♯7'],
  ])('in %s %s is %s', (key, numeral, symbol) => {
    expect(symbolOf(numeral, keyNamed(key))).toBe(symbol);
    expect(formatNumeral(valueOf(parseNumeral(numeral)))).toBe(numeral);
  });

  it.each([
    ['bVII', '♭VII'],
    ['#iv°7', '♯iv°7'],
    ['iidim', 'ii°'],
    ['iim7b5', 'iiø7'],
    ['IIm7', 'ii7'],
    ['iim7', 'ii7'],
    ['IM7', 'Imaj7'],
    ['imaj7', 'iMaj7'],
    ['vii07', undefined],
  ])('%s is printed %s', (text, printed) => {
    const numeral = parseNumeral(text);
    expect(numeral.ok ? formatNumeral(numeral.value) : undefined).toBe(printed);
  });

  it.each([
    ['', 'no-degree', 0],
    ['b', 'no-degree', 1],
    ['X', 'no-degree', 0],
    ['VIII', 'unknown-quality', 3],
    ['IIII', 'unknown-quality', 3],
    ['iv7#5', 'unknown-quality', 3],
    ['i+', 'unknown-quality', 1],
    ['Vfoo', 'unknown-quality', 1],
    ['V7/', 'unknown-target', 3],
    ['V7/8', 'unknown-target', 3],
    ['V7/ii°', 'unknown-target', 5],
    ['V7/ii/x', 'unknown-target', 6],
  ])('“%s”: %s at %i', (text, kind, at) =>
    expect(errorOf(parseNumeral(text))).toEqual({ kind, text, at }),
  );
});

describe('scale-degree numbers', () => {
  // docs/sources.md#degree-numbers
  it('name the triads of the major scale', () =>
    expect(
      '1 2- 3- 4 5 6- 7°'
        .split(' ')
        .map((n) => symbolOf(n, C))
        .join(' '),
    ).toBe('C Dm Em F G Am Bdim'));

  it.each([
    ['5/7', 'G/B', '5/7'],
    ['57', 'G7', '5⁷'],
    ['5⁷', 'G7', '5⁷'],
    ['2-7', 'Dm7', '2-7'],
    ['2m7', 'Dm7', '2-7'],
    ['b7', 'B♭', '♭7'],
    ['♭77', 'B♭7', '♭7⁷'],
    ['#4°7', 'F♯dim7', '♯4°7'],
    ['4maj7', 'Fmaj7', '4maj7'],
    ['7ø7', 'Bm7♭5', '7ø7'],
    ['1-Maj7', 'CmMaj7', '1-Maj7'],
    ['5sus4', 'Gsus4', '5sus4'],
    ['5⁷sus4', 'G7sus4', '5⁷sus4'],
    ['1add9', 'Cadd9', '1add9'],
    ['16/9', 'C6/9', '1⁶/⁹'],
    ['15', 'C5', '1⁵'],
    ['5⁷♭9/7', 'G7♭9/B', '5⁷♭9/7'],
  ])('%s in C is %s, printed %s', (text, symbol, printed) => {
    expect(symbolOf(text, C)).toBe(symbol);
    expect(formatDegreeNumber(valueOf(parseDegreeNumber(text)))).toBe(printed);
  });

  it.each([
    ['', 'no-degree', 0],
    ['8', 'no-degree', 0],
    ['#', 'no-degree', 1],
    ['5x', 'unknown-quality', 1],
    ['5/', 'unknown-target', 2],
    ['5/9', 'unknown-target', 2],
  ])('“%s”: %s at %i', (text, kind, at) =>
    expect(errorOf(parseDegreeNumber(text))).toEqual({ kind, text, at }),
  );
});

describe('a chord named in any way', () => {
  it('is a symbol, a numeral or a number by its first characters', () =>
    expect(['Dm7', 'ii7', '2-7', 'D♭7', '♭II7', '♭2⁷'].map((text) => symbolOf(text, C))).toEqual([
      'Dm7',
      'Dm7',
      'Dm7',
      'D♭7',
      'D♭7',
      'D♭7',
    ]));

  it('is a symbol where no key is given', () =>
    expect(errorOf(parseChordText('ii7'))).toEqual({ kind: 'no-root', text: 'ii7', at: 0 }));

  it('is respelled where it would take three signs', () => {
    expect(symbolOf('♯I', majorKey('C♯'))).toBe('C♯♯');
    expect(symbolOf('♯♯I', majorKey('C♯'))).toBe('D♯');
    expect(symbolOf('♭♭I/♭♭3', majorKey('C♭'))).toBe('B♭♭/D♭');
  });
});

/** Every quality and set of tensions on any step, with or without a bass. */
function scaleChords(): fc.Arbitrary<ScaleChord> {
  const step = fc.record({
    degree: fc.constantFrom(...DEGREES),
    alteration: fc.integer({ min: -2, max: 2 }),
  });
  return fc
    .record({
      step,
      quality: fc.constantFrom(...QUALITIES),
      tensions: fc.constantFrom(...TENSION_SETS),
      bass: fc.option(step, { nil: undefined }),
    })
    .map(({ step: at, quality, tensions, bass }) => ({
      ...at,
      quality,
      tensions,
      ...(bass ? { bass } : {}),
    }));
}

describe('every chord', () => {
  it('of every quality and set of tensions has a numeral and a number that lead back to it', () => {
    const chords = QUALITIES.flatMap((quality) =>
      TENSION_SETS.map((tensions) => ({ degree: 4 as const, alteration: 1, quality, tensions })),
    );
    expect(chords.map((c) => valueOf(parseNumeral(formatNumeral(c))))).toEqual(chords);
    expect(chords.map((c) => valueOf(parseDegreeNumber(formatDegreeNumber(c))))).toEqual(chords);
  });

  it('on any step, applied or not, is read back from its numeral', () => {
    const target = fc.record({
      degree: fc.constantFrom(...DEGREES),
      alteration: fc.integer({ min: -1, max: 1 }),
      mode: fc.constantFrom('major' as const, 'minor' as const),
    });
    fc.assert(
      fc.property(scaleChords(), fc.option(target, { nil: undefined }), (plain, of) => {
        const numeral = of ? { ...plain, of } : plain;
        expect(valueOf(parseNumeral(formatNumeral(numeral)))).toEqual(numeral);
      }),
    );
  });

  it('on any step is read back from its number', () =>
    fc.assert(
      fc.property(scaleChords(), (numbered) => {
        expect(valueOf(parseDegreeNumber(formatDegreeNumber(numbered)))).toEqual(numbered);
      }),
    ));

  it('keeps its sound and spelling on the way to a step of a key and back', () =>
    fc.assert(
      fc.property(anyChord(), anyKey(), (c, key) => {
        expect(chordInKey(scaleChordOf(c, key), key)).toEqual(c);
        expect(chordOfNumeral(numeralOf(c, key), key)).toEqual(c);
      }),
    ));

  it('applied to a step is the chord of that step in that step’s key', () =>
    fc.assert(
      fc.property(anyChord(), anyKey(), fc.constantFrom(...DEGREES), (c, key, degree) => {
        const of = { degree, alteration: 0, mode: 'minor' as const };
        expect(chordOfNumeral(numeralOf(c, key, of), key)).toEqual(c);
      }),
    ));
});

it('reads the same number on the same step in all 30 keys', () =>
  expect(
    KEYS.map((key) => formatDegreeNumber(scaleChordOf({ ...chord('C7'), root: key.tonic }, key))),
  ).toEqual(KEYS.map(() => '1⁷')));

it('counts diminished chords on 6 and 7 of minor from the raised step', () => {
  expect(scaleChordOf(chord('Bdim'), CM)).toMatchObject({ degree: 7, alteration: 0 });
  expect(scaleChordOf(chord('B'), CM)).toMatchObject({ degree: 7, alteration: 1 });
  expect(scaleChordOf({ ...chord('G'), bass: pitchClass('B') }, CM).bass).toEqual({
    degree: 7,
    alteration: 1,
  });
});
