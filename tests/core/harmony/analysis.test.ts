import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AnalysedChord, analyse } from '../../../src/core/harmony/analysis.ts';
import type { Chord } from '../../../src/core/harmony/chord.ts';
import type { Key } from '../../../src/core/harmony/key.ts';
import {
  diatonicSevenths,
  diatonicTriads,
  secondaryDominants,
  tritoneSubstitutes,
} from '../../../src/core/harmony/keyChords.ts';
import { formatNumeral } from '../../../src/core/harmony/numerals.ts';
import { samePitchClass, transposePitchClass } from '../../../src/core/harmony/pitch.ts';
import { transposeChord, transposeKey } from '../../../src/core/harmony/transpose.ts';
import { twoFives } from '../../../src/core/harmony/twoFives.ts';
import { anyChord } from '../../support/chords.ts';
import { anyKey, KEYS } from '../../support/keys.ts';
import { chord, keyName, keyNamed, majorKey } from '../../support/music.ts';

const C = majorKey('C');

function line(symbols: string): Array<Chord | 'no-chord'> {
  return symbols.split(' ').map((s) => (s === 'N.C.' ? 'no-chord' : chord(s)));
}

/** Numerals of a line in a key; a chord heard in another key has that key after an @, an unexplained one a ?. */
function read(symbols: string, key: Key): string {
  return analyse(line(symbols), key)
    .map((heard) => print(heard, key))
    .join(' ');
}

function print(heard: AnalysedChord | undefined, home: Key): string {
  if (!heard) return '-';
  const away = keyName(heard.key) === keyName(home) ? '' : `@${keyName(heard.key)}`;
  return formatNumeral(heard.numeral) + (heard.role === 'unexplained' ? '?' : '') + away;
}

function rolesOf(symbols: string, key: Key): string[] {
  return analyse(line(symbols), key).map((heard) => heard?.role ?? 'none');
}

describe('analysis in one key', () => {
  // Numerals: common practice; chords computed (docs/sources.md#applied-dominants, #tritone-substitutes, #forms).
  it.each([
    ['C', 'C Am Dm G7 C', 'I vi ii V7 I'],
    ['C', 'C A7 Dm7 G7 C', 'I V7/ii ii7 V7 I'],
    ['C', 'E7 A7 D7 G7 C', 'V7/vi V7/ii V7/V V7 I'],
    ['C', 'C D7 Dm7 G7 C', 'I V7/V ii7 V7 I'],
    ['C', 'C D7 C/G G7 C', 'I V7/V I/5 V7 I'],
    ['C', 'C E F G C', 'I V/vi IV V I'],
    ['C', 'C C+ F', 'I V+/IV IV'],
    ['C', 'G7sus4 C C7sus4 C7 F', 'V7sus4 I V7sus4/IV V7/IV IV'],
    ['C', 'Am7 A♭7 G7 C', 'vi7 ♭II7/V V7 I'],
    ['C', 'Em7 E♭7 Dm7 D♭7 Cmaj7', 'iii7 ♭II7/ii ii7 ♭II7 Imaj7'],
    ['C', 'C C♯7 C', 'I ♭II7 I'],
    ['C', 'Gm7 C7 Fmaj7', 'ii7/IV V7/IV IVmaj7'],
    ['C', 'F♯m7♭5 B7 Em7 A7 Dm7', 'iiø7/iii V7/iii iii7 V7/ii ii7'],
    ['C', 'Fm7 B♭7 E♭maj7 Dm7 G7 C', 'ii7/♭III V7/♭III ♭IIImaj7 ii7 V7 I'],
    ['C', 'Cmaj7 Cm7 F7 B♭maj7 Dm7 G7 C', 'Imaj7 ii7/♭VII V7/♭VII ♭VIImaj7 ii7 V7 I'],
    ['C', 'Gm7 C7 Em7', 'ii7/IV V7/IV iii7'],
    ['C', 'Fm7 B♭7 Cmaj7', 'iv7 ♭VII7 Imaj7'],
    ['C', 'C F Fm C A♭ B♭ C', 'I IV iv I ♭VI ♭VII I'],
    ['C', 'C D♭ C', 'I ♭II I'],
    ['C', 'G7♯5 C G+ C D7♯5 G7 C', 'V7♯5 I V+ I V7♯5/V V7 I'],
    ['C', 'C C♯dim7 Dm7 D♯dim7 Em7', 'I vii°7/ii ii7 vii°7/iii iii7'],
    ['C', 'Em7 E♭dim7 Dm7 G7', 'iii7 ♭iii°7 ii7 V7'],
    [
      'C',
      'C7 F7 C7 C7 F7 F♯dim7 C7 A7 Dm7 G7 C7 G7',
      'I7 IV7 I7 I7 IV7 ♯iv°7 I7 V7/ii ii7 V7 I7 V7',
    ],
    ['C', 'C N.C. D7 N.C. G', 'I - V7/V - V'],
    ['A minor', 'Am G F E Am Dm Am E7 Am', 'i VII VI V i iv i V7 i'],
    ['C minor', 'Cm Fm7 B♭7 E♭ A♭ Dm7♭5 G7 Cm', 'i iv7 VII7 III VI iiø7 V7 i'],
    ['C minor', 'Cm C7 Fm D7 G7 Cm', 'i V7/iv iv V7/V V7 i'],
    ['C minor', 'Cm F Cm C', 'i IV i I'],
    ['C minor', 'Cm Bdim7 Cm G+ Cm D♭ G', 'i vii°7 i V+ i ♭II V'],
  ])('in %s: %s is %s', (key, symbols, numerals) =>
    expect(read(symbols, keyNamed(key))).toBe(numerals),
  );

  it('names what each chord is', () => {
    expect(rolesOf('C A7 Dm7 D♭7 C', C)).toEqual([
      'diatonic',
      'applied-dominant',
      'diatonic',
      'tritone-substitute',
      'diatonic',
    ]);
    expect(rolesOf('Gm7 C7 F Fm D♭ C', C)).toEqual([
      'applied-second',
      'applied-dominant',
      'diatonic',
      'borrowed',
      'neapolitan',
      'diatonic',
    ]);
    expect(rolesOf('C7 F7 F♯dim7 C7', C)).toEqual([
      'blues',
      'blues',
      'common-tone-diminished',
      'blues',
    ]);
    expect(rolesOf('Em7 E♭dim7 Dm7', C)[1]).toBe('passing-diminished');
  });

  it.each([
    ['C', 'C D7 F C', 'I II7? IV I'],
    ['C', 'C G♭ F♯m E', 'I ♭V? ♯iv? III?'],
    ['C', 'C B♭m C', 'I ♭vii? I'],
    ['C minor', 'Cm F♯m Cm', 'i ♯iv? i'],
  ])('in %s leaves unexplained what fits no rule: %s is %s', (key, symbols, numerals) =>
    expect(read(symbols, keyNamed(key))).toBe(numerals),
  );

  it('has nothing to say about no chords', () => {
    expect(analyse([], C)).toEqual([]);
    expect(analyse(['no-chord'], C)).toEqual([undefined]);
  });
});

describe('modulation', () => {
  it.each([
    ['C F G C C F G C D G A D D G A D', 'I IV V I I IV V I I@D IV@D V@D I@D I@D IV@D V@D I@D'],
    [
      'C Am F G C C♯m F♯ B G♯m E F♯ B C F G C',
      'I vi IV V I ii@B V@B I@B vi@B IV@B V@B I@B I IV V I',
    ],
    ['C G Am F D A Bm G D A Bm G', 'I V vi IV I@D V@D vi@D IV@D I@D V@D vi@D IV@D'],
  ])('is heard in %s', (symbols, numerals) => expect(read(symbols, C)).toBe(numerals));

  it('is not heard in a chord or two from elsewhere, nor in the relative key', () => {
    expect(read('C F♯ A♭m C', C)).toBe('I ♯IV? ♭vi? I');
    expect(read('C G Am E7 Am Dm Am E7 Am', C)).toBe('I V vi V7/vi vi ii vi V7/vi vi');
  });
});

describe('in every key', () => {
  it.each(KEYS.map(keyName))('the chords of %s have their own numerals', (name) => {
    const key = keyNamed(name);
    const forms =
      key.mode === 'major' ? (['natural'] as const) : (['natural', 'harmonic'] as const);
    for (const form of forms)
      for (const { chord: c, numeral } of [
        ...diatonicTriads(key, form),
        ...diatonicSevenths(key, form),
      ])
        expect(analyse([c], key)[0]).toMatchObject({ role: 'diatonic', numeral });
    for (const { chord: c, numeral, target } of [
      ...secondaryDominants(key),
      ...tritoneSubstitutes(key),
    ]) {
      const heard = analyse([c, target!], key)[0]!;
      if (heard.role !== 'diatonic') expect(heard.numeral).toEqual(numeral);
    }
  });

  it('analysing and transposing commute', () => {
    const intervals = ['2m', '2M', '3m', '4P', '-2M', '-3M'];
    fc.assert(
      fc.property(
        fc.array(anyChord(), { maxLength: 8 }),
        anyKey(),
        fc.constantFrom(...intervals),
        (chords, key, interval) => {
          const there = analyse(chords, key);
          const moved = analyse(
            chords.map((c) => transposeChord(c, interval)),
            transposeKey(key, interval),
          );
          expect(moved.map((m) => m?.role)).toEqual(there.map((m) => m?.role));
          expect(moved.map((m) => m?.key.mode)).toEqual(there.map((m) => m?.key.mode));
          const tonics = there.map((m) => transposePitchClass(m!.key.tonic, interval));
          const isRespelled = moved.some((m, i) => !samePitchClass(m!.key.tonic, tonics[i]!));
          const numeralsOf = (heard: typeof there) => heard.map((m) => formatNumeral(m!.numeral));
          if (!isRespelled) expect(numeralsOf(moved)).toEqual(numeralsOf(there));
        },
      ),
    );
  });

  it('a modulation transposes with the song', () => {
    const chords = line('C F G C D G A D D G A D');
    for (const interval of ['2m', '2M', '3m', '4P', '5P', '-2m']) {
      const moved = analyse(
        chords.map((c) => (c === 'no-chord' ? c : transposeChord(c, interval))),
        transposeKey(C, interval),
      );
      const there = analyse(chords, C);
      expect(moved.map((m) => m!.key.tonic)).toEqual(
        there.map((m) => transposePitchClass(m!.key.tonic, interval)),
      );
    }
  });
});

describe('ii–V chains', () => {
  it.each([
    ['Dm7 G7 Cmaj7', [{ second: 0, dominant: 1, arrival: 2 }]],
    ['Dm7 D♭7 Cmaj7', [{ second: 0, dominant: 1, arrival: 2 }]],
    [
      'Em7 A7 Dm7 G7',
      [
        { second: 0, dominant: 1, arrival: 2 },
        { second: 2, dominant: 3 },
      ],
    ],
    ['Dm7 N.C. G7sus4 G7 C', [{ second: 0, dominant: 2, arrival: 4 }]],
    ['Dm Dm7 G7 F', [{ second: 1, dominant: 2 }]],
    ['Dm7 G C', []],
    ['Dmaj7 G7 C', []],
  ])('in %s are %j', (symbols, found) => expect(twoFives(line(symbols))).toEqual(found));
});
