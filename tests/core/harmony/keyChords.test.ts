import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cadencesOf } from '../../../src/core/harmony/cadences.ts';
import { type Chord, chordTones } from '../../../src/core/harmony/chord.ts';
import { formatChordSymbol } from '../../../src/core/harmony/chordSymbol.ts';
import { fifthsOf, parallelKey, relativeKey, writableKey } from '../../../src/core/harmony/key.ts';
import {
  diatonicSevenths,
  diatonicTriads,
  type KeyChord,
  secondaryDominants,
  tritoneSubstitute,
  tritoneSubstitutes,
} from '../../../src/core/harmony/keyChords.ts';
import { chordOfNumeral, formatNumeral } from '../../../src/core/harmony/numerals.ts';
import { chromaOf, formatPitchClass } from '../../../src/core/harmony/pitch.ts';
import { anyKey, KEYS } from '../../support/keys.ts';
import { chord, keyName, keyNamed, majorKey, minorKey } from '../../support/music.ts';

function symbolsOf(chords: readonly KeyChord[]): string {
  return chords.map((c) => formatChordSymbol(c.chord)).join(' ');
}

function numeralsOf(chords: readonly KeyChord[]): string {
  return chords.map((c) => formatNumeral(c.numeral)).join(' ');
}

/**
 * Triads of the 15 signatures (docs/sources.md#key-signatures): signature, major tonic, its seven
 * triads, minor tonic, its seven natural triads, then V and vii° of harmonic minor.
 */
const SIGNATURES = [
  [-7, 'C♭ D♭m E♭m F♭ G♭ A♭m B♭dim', 'A♭m B♭dim C♭ D♭m E♭m F♭ G♭', 'E♭ Gdim'],
  [-6, 'G♭ A♭m B♭m C♭ D♭ E♭m Fdim', 'E♭m Fdim G♭ A♭m B♭m C♭ D♭', 'B♭ Ddim'],
  [-5, 'D♭ E♭m Fm G♭ A♭ B♭m Cdim', 'B♭m Cdim D♭ E♭m Fm G♭ A♭', 'F Adim'],
  [-4, 'A♭ B♭m Cm D♭ E♭ Fm Gdim', 'Fm Gdim A♭ B♭m Cm D♭ E♭', 'C Edim'],
  [-3, 'E♭ Fm Gm A♭ B♭ Cm Ddim', 'Cm Ddim E♭ Fm Gm A♭ B♭', 'G Bdim'],
  [-2, 'B♭ Cm Dm E♭ F Gm Adim', 'Gm Adim B♭ Cm Dm E♭ F', 'D F♯dim'],
  [-1, 'F Gm Am B♭ C Dm Edim', 'Dm Edim F Gm Am B♭ C', 'A C♯dim'],
  [0, 'C Dm Em F G Am Bdim', 'Am Bdim C Dm Em F G', 'E G♯dim'],
  [1, 'G Am Bm C D Em F♯dim', 'Em F♯dim G Am Bm C D', 'B D♯dim'],
  [2, 'D Em F♯m G A Bm C♯dim', 'Bm C♯dim D Em F♯m G A', 'F♯ A♯dim'],
  [3, 'A Bm C♯m D E F♯m G♯dim', 'F♯m G♯dim A Bm C♯m D E', 'C♯ E♯dim'],
  [4, 'E F♯m G♯m A B C♯m D♯dim', 'C♯m D♯dim E F♯m G♯m A B', 'G♯ B♯dim'],
  [5, 'B C♯m D♯m E F♯ G♯m A♯dim', 'G♯m A♯dim B C♯m D♯m E F♯', 'D♯ F♯♯dim'],
  [6, 'F♯ G♯m A♯m B C♯ D♯m E♯dim', 'D♯m E♯dim F♯ G♯m A♯m B C♯', 'A♯ C♯♯dim'],
  [7, 'C♯ D♯m E♯m F♯ G♯ A♯m B♯dim', 'A♯m B♯dim C♯ D♯m E♯m F♯ G♯', 'E♯ G♯♯dim'],
] as const;

function tonicOf(triads: string): string {
  return triads.split(/m? /)[0]!;
}

describe('diatonic triads', () => {
  it.each(SIGNATURES)('with %i signs: %s; minor %s, raised %s', (fifths, major, minor, raised) => {
    const majorTonic = majorKey(tonicOf(major));
    const minorTonic = minorKey(tonicOf(minor));
    expect([fifthsOf(majorTonic), fifthsOf(minorTonic)]).toEqual([fifths, fifths]);
    expect(symbolsOf(diatonicTriads(majorTonic))).toBe(major);
    expect(symbolsOf(diatonicTriads(minorTonic))).toBe(minor);
    const harmonic = diatonicTriads(minorTonic, 'harmonic');
    expect(symbolsOf([harmonic[4]!, harmonic[6]!])).toBe(raised);
  });
});

/** Numerals and sevenths by scale (docs/sources.md#diatonic-chords). */
const SCALES = [
  ['C', 'natural', 'I ii iii IV V vi vii°', 'maj7 m7 m7 maj7 7 m7 m7♭5'],
  ['C minor', 'natural', 'i ii° III iv v VI VII', 'm7 m7♭5 maj7 m7 m7 maj7 7'],
  ['C minor', 'harmonic', 'i ii° III+ iv V VI vii°', 'mMaj7 m7♭5 maj7♯5 m7 7 maj7 dim7'],
  ['C minor', 'melodic', 'i ii III+ IV V vi° vii°', 'mMaj7 m7 maj7♯5 7 7 m7♭5 m7♭5'],
] as const;

describe('the chords of a scale', () => {
  it.each(SCALES)('%s, %s: triads %s, sevenths %s', (name, form, numerals, sevenths) => {
    const key = keyNamed(name);
    expect(numeralsOf(diatonicTriads(key, form))).toBe(numerals);
    expect(
      diatonicSevenths(key, form)
        .map((c) => formatChordSymbol(c.chord).replace(/^[A-G][♭♯]?/, ''))
        .join(' '),
    ).toBe(sevenths);
  });

  it.each([
    ['C', 'Cmaj7 Dm7 Em7 Fmaj7 G7 Am7 Bm7♭5'],
    ['E♭', 'E♭maj7 Fm7 Gm7 A♭maj7 B♭7 Cm7 Dm7♭5'],
    ['F♯', 'F♯maj7 G♯m7 A♯m7 Bmaj7 C♯7 D♯m7 E♯m7♭5'],
  ])('sevenths of %s major (computed)', (tonic, symbols) =>
    expect(symbolsOf(diatonicSevenths(majorKey(tonic)))).toBe(symbols),
  );
});

describe('applied dominants', () => {
  // docs/sources.md#applied-dominants
  it.each([
    ['C', 'A7 B7 C7 D7 E7'],
    ['F', 'D7 E7 F7 G7 A7'],
    ['G', 'E7 F♯7 G7 A7 B7'],
    ['D', 'B7 C♯7 D7 E7 F♯7'],
    ['A', 'F♯7 G♯7 A7 B7 C♯7'],
    ['B♭', 'G7 A7 B♭7 C7 D7'],
    ['E♭', 'C7 D7 E♭7 F7 G7'],
    ['E', 'C♯7 D♯7 E7 F♯7 G♯7'],
  ])('of %s major are %s', (tonic, symbols) => {
    const dominants = secondaryDominants(majorKey(tonic));
    expect(symbolsOf(dominants)).toBe(symbols);
    expect(numeralsOf(dominants)).toBe('V7/ii V7/iii V7/IV V7/V V7/vi');
  });

  it('of minor lead to its major and minor triads (computed)', () => {
    const dominants = secondaryDominants(minorKey('C'));
    expect(symbolsOf(dominants)).toBe('B♭7 C7 D7 E♭7 F7');
    expect(numeralsOf(dominants)).toBe('V7/III V7/iv V7/V V7/VI V7/VII');
    expect(dominants.map((d) => formatChordSymbol(d.target!)).join(' ')).toBe('E♭ Fm G A♭ B♭');
  });
});

/** Third and seventh as keys of one octave, ascending. */
function guideTones(dominant: Chord): number[] {
  return chordTones(dominant)
    .filter((tone) => tone.degree === 3 || tone.degree === 7)
    .map((tone) => chromaOf(tone.pitchClass))
    .toSorted((a, b) => a - b);
}

describe('tritone substitutes', () => {
  // docs/sources.md#tritone-substitutes
  it.each([
    ['G7', 'D♭7'],
    ['C7', 'G♭7'],
    ['F7', 'B7'],
    ['B♭7', 'E7'],
    ['E♭7', 'A7'],
    ['A♭7', 'D7'],
    ['D♭7', 'G7'],
    ['B7', 'F7'],
    ['D7', 'A♭7'],
  ])('%s is replaced by %s', (dominant, substitute) =>
    expect(formatChordSymbol(tritoneSubstitute(chord(dominant))!)).toBe(substitute),
  );

  it.each(KEYS.map(keyName))('share third and seventh in %s', (name) => {
    for (const { chord: dominant } of secondaryDominants(keyNamed(name)))
      expect(guideTones(tritoneSubstitute(dominant)!)).toEqual(guideTones(dominant));
  });

  it('exist for plain dominant sevenths only', () =>
    expect(tritoneSubstitute(chord('Gm7'))).toBeUndefined());

  it('of a key lead down a semitone', () => {
    const substitutes = tritoneSubstitutes(majorKey('C'));
    expect(symbolsOf(substitutes)).toBe('D♭7 E♭7 F7 G♭7 A♭7 B♭7');
    expect(numeralsOf(substitutes)).toBe('♭II7 ♭II7/ii ♭II7/iii ♭II7/IV ♭II7/V ♭II7/vi');
    expect(substitutes.map((s) => formatPitchClass(s.target!.root)).join(' ')).toBe('C D E F G A');
  });
});

describe('cadences', () => {
  // docs/sources.md#cadences
  it.each([
    ['C', 'G7 C | F C | C G | G7 Am | Dm7 G7 Cmaj7'],
    ['C minor', 'G7 Cm | Fm Cm | Cm G | G7 A♭ | Dm7♭5 G7 Cm'],
    ['E♭', 'B♭7 E♭ | A♭ E♭ | E♭ B♭ | B♭7 Cm | Fm7 B♭7 E♭maj7'],
  ])('in %s: perfect, plagal, half, deceptive, ii–V–I are %s', (key, symbols) =>
    expect(
      cadencesOf(keyNamed(key))
        .map((c) => symbolsOf(c.chords))
        .join(' | '),
    ).toBe(symbols),
  );
});

describe('neighbouring keys', () => {
  it('the relative key has the same signature and is mutual', () =>
    fc.assert(
      fc.property(anyKey(), (key) => {
        expect(fifthsOf(relativeKey(key))).toBe(fifthsOf(key));
        expect(relativeKey(relativeKey(key))).toEqual(key);
      }),
    ));

  it('the parallel key keeps the tonic and moves the signature by three signs', () =>
    fc.assert(
      fc.property(anyKey(), (key) => {
        const parallel = parallelKey(key);
        expect(parallel.tonic).toEqual(key.tonic);
        expect(fifthsOf(parallel) - fifthsOf(key)).toBe(key.mode === 'major' ? -3 : 3);
      }),
    ));

  it('a key with more than seven signs is written as another', () => {
    expect(writableKey(majorKey('G♯'))).toEqual(majorKey('A♭'));
    expect(writableKey(minorKey('D♭'))).toEqual(minorKey('C♯'));
    expect(writableKey(majorKey('F♭'))).toEqual(majorKey('E'));
    expect(KEYS.map(writableKey)).toEqual(KEYS);
  });
});

it('every key chord is the chord of its numeral', () =>
  fc.assert(
    fc.property(anyKey(), (key) => {
      const chords = [
        ...diatonicTriads(key, 'melodic'),
        ...diatonicSevenths(key, 'harmonic'),
        ...secondaryDominants(key),
        ...cadencesOf(key).flatMap((c) => c.chords),
      ];
      expect(chords.map((c) => chordOfNumeral(c.numeral, key))).toEqual(chords.map((c) => c.chord));
    }),
  ));
