import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chordTones } from '../../../src/core/harmony/chord.ts';
import { formatChordSymbol, parseChordSymbol } from '../../../src/core/harmony/chordSymbol.ts';
import { formatPitchClass } from '../../../src/core/harmony/pitch.ts';
import { anyChord, chordsOn, ROOTS } from '../../support/chords.ts';
import { chord, errorOf, pitchClass } from '../../support/music.ts';

/** Semitones above the root (docs/sources.md#chord-formulae). */
const FORMULAE: ReadonlyArray<readonly [symbols: string, semitones: string]> = [
  ['C CM Cmaj', '0 4 7'],
  ['Cm Cmin C-', '0 3 7'],
  ['C+ Caug', '0 4 8'],
  ['Cdim C°', '0 3 6'],
  ['C7', '0 4 7 10'],
  ['Cmaj7 CM7', '0 4 7 11'],
  ['Cm7', '0 3 7 10'],
  ['Cdim7 C°7', '0 3 6 9'],
  ['C+7 C7#5', '0 4 8 10'],
  ['Cø7 Cm7b5', '0 3 6 10'],
  ['CmM7', '0 3 7 11'],
  ['C6', '0 4 7 9'],
  ['Cm6', '0 3 7 9'],
  ['C+M7 Cmaj7#5', '0 4 8 11'],
  ['C7b5', '0 4 6 10'],
  ['C7b9', '0 4 7 10 13'],
  ['C9', '0 4 7 10 14'],
  ['Cmaj9', '0 4 7 11 14'],
  ['Cm9', '0 3 7 10 14'],
  ['C11', '0 4 7 10 14 17'],
  ['Cmaj11', '0 4 7 11 14 17'],
  ['Cm11', '0 3 7 10 14 17'],
  ['C13', '0 4 7 10 14 17 21'],
  ['Cmaj13', '0 4 7 11 14 17 21'],
  ['Cm13', '0 3 7 10 14 17 21'],
  ['Csus2', '0 2 7'],
  ['Csus Csus4', '0 5 7'],
  ['C7sus4', '0 5 7 10'],
  ['C5', '0 7'],
  ['Cadd9', '0 4 7 14'],
  ['C6/9', '0 4 7 9 14'],
  ['C7#9', '0 4 7 10 15'],
];

const FORMULA_ROWS = FORMULAE.flatMap(([symbols, semitones]) =>
  symbols.split(' ').map((symbol) => [symbol, semitones] as const),
);

describe('chord formulae', () => {
  it.each(FORMULA_ROWS)('%s has the semitones %s', (symbol, semitones) =>
    expect(
      chordTones(chord(symbol))
        .map((tone) => tone.semitones)
        .join(' '),
    ).toBe(semitones),
  );
});

describe('spelling of chord notes', () => {
  it.each([
    ['Fm7♭5', 'F A♭ C♭ E♭'],
    ['C♯7', 'C♯ E♯ G♯ B'],
    ['G♭7', 'G♭ B♭ D♭ F♭'],
    ['Bdim7', 'B D F A♭'],
    ['C♯dim7', 'C♯ E G B♭'],
    ['E+', 'E G♯ B♯'],
    ['D♯7♯9', 'D♯ F♯♯ A♯ C♯ E♯♯'],
    ['A♭mMaj7', 'A♭ C♭ E♭ G'],
    ['B♭13♯11', 'B♭ D F A♭ C E G'],
  ])('%s is %s, one letter to each degree (computed from the formulae)', (symbol, notes) =>
    expect(
      chordTones(chord(symbol))
        .map((t) => formatPitchClass(t.pitchClass))
        .join(' '),
    ).toBe(notes),
  );
});

/** Spellings in use beside the table above (common practice), all on C, under the one that is printed. */
const SPELLINGS: ReadonlyArray<readonly [printed: string, spelled: string]> = [
  ['C', 'C Cma CMaj CMAJ'],
  ['Cm', 'Cm Cmi Cmin C- C− CMI'],
  ['C+', 'C+ Caug C+5 C(#5) C(♯5)'],
  ['Cdim', 'Cdim C° Cº Co Cmb5 Cm♭5 Cm-5'],
  ['Csus4', 'Csus Csus4'],
  ['Cmaj7', 'CΔ CΔ7 C∆7 CM7 CMa7 Cma7 CMA7 Cmaj7 C(maj7)'],
  ['Cm7', 'Cm7 Cmi7 Cmin7 C-7 CMI7'],
  ['CmMaj7', 'CmMaj7 Cmmaj7 CmM7 CminMaj7 CmiMA7 C-Δ7 C-Δ CmΔ7 Cm(maj7) C-(M7)'],
  ['Cdim7', 'Cdim7 C°7 Co7'],
  ['Cm7♭5', 'Cø Cø7 Cm7b5 Cmi7(b5) C-7(♭5) Cm7-5'],
  ['C7♯5', 'C+7 Caug7 C7#5 C7+5 C7(#5) C7+ C7aug'],
  ['Cmaj7♯5', 'C+M7 C+maj7 Caug(maj7) Cmaj7#5 CΔ7(♯5)'],
  ['C7♭5', 'C7b5 C7-5 C7(b5)'],
  ['C7sus4', 'C7sus C7sus4 C7(sus4)'],
  ['C9sus4', 'C9sus C9sus4'],
  ['C7sus4♭9', 'C7sus4b9 C7b9sus4 C7sus(b9)'],
  ['C13sus4', 'C13sus4 C13sus'],
  ['C6', 'C6 Cmaj6 CM6 Cadd6'],
  ['Cm6', 'Cm6 C-6 Cmi6 Cmadd6'],
  ['C6/9', 'C6/9 C69 C6(9) Cmaj6/9'],
  ['Cm6/9', 'Cm6/9 Cm69'],
  ['Cadd9', 'Cadd9 Cadd2 C(add9) C(9)'],
  ['Cmadd9', 'Cmadd9 Cmadd2 Cm(add9) C-add9'],
  ['Cadd11', 'Cadd11 Cadd4'],
  ['C7♭9', 'C7b9 C7♭9 C7-9 C7(b9) C9b9'],
  ['C7♯9', 'C7#9 C7+9 C7(♯9)'],
  ['C7♯11', 'C7#11 C7(#11)'],
  ['C7♭13', 'C7b13 C7(b13)'],
  ['C7♭9♭13', 'C7b9b13 C7(b9,b13) C7(b13b9)'],
  ['C7♯5♯9', 'C7#5#9 C+7#9 C7alt'],
  ['C9♯11', 'C9#11 C9(#11)'],
  ['C13♯11', 'C13#11 C13(♯11)'],
  ['C7(13)', 'C7(13)'],
  ['C7(9,13)', 'C9(13) C7(9,13)'],
  ['Cmaj9♯11', 'Cmaj9#11 CM9(#11)'],
  ['Cm9♭5', 'Cø9 Cm9b5'],
  ['Cdim7(9)', 'Cdim9 C°9 C°7(9)'],
];

describe('reading spellings', () => {
  it.each(SPELLINGS)('%s is what is printed for %s', (printed, spelled) =>
    expect(spelled.split(' ').map((s) => formatChordSymbol(chord(s)))).toEqual(
      spelled.split(' ').map(() => printed),
    ),
  );

  it('takes signs of either kind at root and bass', () => {
    expect(formatChordSymbol(chord('Bbm7b5/Db'))).toBe('B♭m7♭5/D♭');
    expect(formatChordSymbol(chord('F#/A#'))).toBe('F♯/A♯');
    expect(formatChordSymbol(chord('Fx7'))).toBe('F♯♯7');
  });

  it('tells a bass from the nine of a six-nine chord', () => {
    expect(chord('C6/9/E').bass).toEqual(pitchClass('E'));
    expect(chord('C6/E').tensions).toEqual([]);
  });

  it('takes spaces around the symbol and between tensions in brackets', () =>
    expect(chord(' C7(b9 b13) ')).toEqual(chord('C7♭9♭13')));

  it('keeps a bass that is the root, as it was written', () =>
    expect(formatChordSymbol(chord('A/A'))).toBe('A/A'));

  it('reads the longest sign: B♭♭5 is a bare fifth on B♭♭', () =>
    expect(chord('Bbb5')).toMatchObject({ root: pitchClass('B♭♭'), quality: 'power' }));
});

describe('texts that are no chord symbol', () => {
  it.each([
    ['', 'no-root', 0],
    ['H7', 'no-root', 0],
    ['am', 'no-root', 0],
    ['  ?', 'no-root', 2],
    ['Cfoo', 'unknown-quality', 1],
    ['C7x', 'unknown-quality', 2],
    ['Cm7#5', 'unknown-quality', 3],
    ['Cø6', 'unknown-quality', 2],
    ['Cmaj7sus4', 'unknown-quality', 5],
    ['C7(b9', 'unknown-quality', 5],
    ['C7(b9,foo)', 'unknown-quality', 6],
    ['C713', 'unknown-quality', 2],
    ['C maj7', 'unknown-quality', 1],
    ['C7add5', 'unknown-quality', 2],
    ['C#♭', 'unknown-quality', 2],
    ['C/', 'unknown-bass', 2],
    ['C/H', 'unknown-bass', 2],
    ['C/Em', 'unknown-bass', 2],
    ['C6/9/x', 'unknown-bass', 5],
  ])('“%s”: %s at %i', (text, kind, at) =>
    expect(errorOf(parseChordSymbol(text))).toEqual({ kind, text, at }),
  );
});

describe('printing and reading', () => {
  it('are inverse for every quality with every set of tensions on every root', {
    timeout: 30_000,
  }, () => {
    const chords = ROOTS.flatMap(chordsOn);
    expect(chords).toHaveLength(35 * 19 * 128);
    const changed = chords.filter((c) => {
      const again = parseChordSymbol(formatChordSymbol(c));
      return !again.ok || JSON.stringify(again.value) !== JSON.stringify(c);
    });
    expect(changed.map(formatChordSymbol)).toEqual([]);
  });

  it('are inverse with a bass', () =>
    fc.assert(
      fc.property(anyChord(), (c) => {
        expect(chord(formatChordSymbol(c))).toEqual(c);
      }),
    ));
});
