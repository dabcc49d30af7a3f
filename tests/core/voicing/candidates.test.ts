import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chord } from '../../../src/core/harmony/chord.ts';
import { chromaOf } from '../../../src/core/harmony/pitch.ts';
import { voicingCandidates, voicingOfKeys } from '../../../src/core/voicing/candidates.ts';
import { bassChroma, chordNotes } from '../../../src/core/voicing/chordNotes.ts';
import { fitsHand } from '../../../src/core/voicing/playable.ts';
import {
  type BassManner,
  DEFAULT_VOICING,
  heldKeys,
  type Manner,
  type VoicingSettings,
} from '../../../src/core/voicing/voicing.ts';
import { anyChord, QUALITIES, ROOTS, TENSION_SETS } from '../../support/chords.ts';
import { chord } from '../../support/music.ts';
import { handsText, rightText } from '../../support/voicings.ts';

const MANNERS: readonly Manner[] = ['close', 'open', 'shell', 'rootless'];
const BASSES: readonly BassManner[] = ['single', 'octave', 'fifth', 'tenth', 'elsewhere'];

function settings(parts: Partial<VoicingSettings> = {}): VoicingSettings {
  return { ...DEFAULT_VOICING, ...parts };
}

/** The right hands of all candidates, each once, in their order. */
function rights(symbol: string, parts: Partial<VoicingSettings> = {}): string[] {
  return [...new Set(voicingCandidates(chord(symbol), settings(parts)).map(rightText))];
}

/** The left hands of all candidates, each once. */
function lefts(symbol: string, parts: Partial<VoicingSettings> = {}): string[] {
  const hands = voicingCandidates(chord(symbol), settings(parts)).map(heldKeys);
  return [...new Set(hands.map(({ left }) => left.join(' ')))];
}

/** Degrees that the right hand holds, ascending, whatever the inversion. */
function rightDegrees(symbol: string, parts: Partial<VoicingSettings> = {}): string {
  const [first] = voicingCandidates(chord(symbol), settings(parts));
  const right = first!.filter((note) => note.hand === 'right');
  return right
    .map((note) => note.degree)
    .toSorted((a, b) => a - b)
    .join(' ');
}

const anySettings = () =>
  fc.record({
    manner: fc.constantFrom(...MANNERS),
    bass: fc.constantFrom(...BASSES),
    fullness: fc.constantFrom(3 as const, 4 as const, 5 as const),
    spanSemitones: fc.integer({ min: 7, max: 17 }),
    rightLowest: fc.integer({ min: 45, max: 62 }),
    rightHighest: fc.integer({ min: 66, max: 90 }),
    leftLowest: fc.integer({ min: 21, max: 36 }),
    leftHighest: fc.integer({ min: 40, max: 60 }),
  });

describe('voicingCandidates', () => {
  it('gives inversions of a triad in close position over each bass, in order', () => {
    expect(voicingCandidates(chord('C'), settings({ rightHighest: 72 })).map(handsText)).toEqual([
      '36 | 55 60 64',
      '48 | 55 60 64',
      '36 | 60 64 67',
      '48 | 60 64 67',
      '36 | 64 67 72',
      '48 | 64 67 72',
    ]);
  });

  it('says of each note its hand and its degree', () => {
    const [first] = voicingCandidates(chord('Dm7/G'), settings());
    expect(first).toEqual([
      { keyNumber: 31, degree: 1, hand: 'left' },
      { keyNumber: 57, degree: 5, hand: 'right' },
      { keyNumber: 60, degree: 7, hand: 'right' },
      { keyNumber: 62, degree: 1, hand: 'right' },
      { keyNumber: 65, degree: 3, hand: 'right' },
    ]);
    expect(voicingCandidates(chord('C/E'), settings())[0]![0]).toEqual({
      keyNumber: 28,
      degree: 3,
      hand: 'left',
    });
  });

  it('has one empty voicing for N.C.', () =>
    expect(voicingCandidates('no-chord', settings())).toEqual([[]]));

  it.each(MANNERS)('finds hands for every chord, %s, in the default settings', (manner) => {
    const roots = ROOTS.filter(
      (root, i) => i === ROOTS.findIndex((r) => chromaOf(r) === chromaOf(root)),
    );
    expect(roots.length).toBe(12);
    const upToTwoTensions = TENSION_SETS.filter((set) => set.length <= 2);
    const unplayable: Chord[] = [];
    const check = (candidate: Chord) => {
      if (voicingCandidates(candidate, settings({ manner })).length === 0)
        unplayable.push(candidate);
    };
    for (const quality of QUALITIES) {
      for (const root of roots)
        for (const tensions of upToTwoTensions) check({ root, quality, tensions });
      for (const tensions of TENSION_SETS) check({ root: roots[0]!, quality, tensions });
    }
    expect(unplayable).toEqual([]);
  });

  it('keeps to ranges, spans and hands, and to the notes of the chord', () =>
    fc.assert(
      fc.property(anyChord(), anySettings(), (name, parts) => {
        const chosen = settings(parts);
        const chromas = [...chordNotes(name).map((note) => note.chroma), bassChroma(name)];
        for (const voicing of voicingCandidates(name, chosen)) {
          const { left, right } = heldKeys(voicing);
          const highestLeft =
            parts.bass === 'elsewhere' ? parts.rightLowest - 1 : parts.leftHighest;
          expect(fitsHand(left, chosen.spanSemitones)).toBe(true);
          expect(fitsHand(right, chosen.spanSemitones)).toBe(true);
          expect(right.length).toBeLessThanOrEqual(chosen.fullness);
          expect(left[0]).toBeGreaterThanOrEqual(chosen.leftLowest);
          expect(left.at(-1)).toBeLessThanOrEqual(highestLeft);
          expect(right[0]).toBeGreaterThanOrEqual(chosen.rightLowest);
          expect(right.at(-1)).toBeLessThanOrEqual(chosen.rightHighest);
          expect(left.at(-1)).toBeLessThan(right[0]!);
          expect([...left, ...right].every((key) => chromas.includes(key % 12))).toBe(true);
        }
      }),
      { numRuns: 200 },
    ));

  it('lists no voicing twice, and the same list every time', () =>
    fc.assert(
      fc.property(anyChord(), anySettings(), (name, parts) => {
        const texts = voicingCandidates(name, settings(parts)).map(handsText);
        expect(new Set(texts).size).toBe(texts.length);
        expect(voicingCandidates(name, settings(parts)).map(handsText)).toEqual(texts);
      }),
      { numRuns: 100 },
    ));

  it('has none where a range holds no note of the chord', () => {
    expect(voicingCandidates(chord('C'), settings({ leftLowest: 37, leftHighest: 47 }))).toEqual(
      [],
    );
    expect(voicingCandidates(chord('C'), settings({ rightHighest: 59 }))).toEqual([]);
    expect(voicingCandidates(chord('C'), settings({ spanSemitones: 2 }))).toEqual([]);
  });
});

describe('the right hand', () => {
  // common practice: the fifth is left out first, then the root; the third of a dominant 11th
  it.each([
    ['C', '1 3 5'],
    ['C7', '1 3 5 7'],
    ['Cmaj9', '1 3 7 9'],
    ['C9', '1 3 7 9'],
    ['C11', '1 7 9 11'],
    ['C13', '3 7 9 13'],
    ['Cm11', '3 7 9 11'],
    ['C7♭9', '1 3 7 9'],
    ['C7♯5♯9', '3 5 7 9'],
    ['C6/9', '1 3 6 9'],
    ['Cadd9', '1 3 5 9'],
    ['C9/E', '1 3 7 9'],
    ['C13/E', '1 3 7 13'],
    ['Csus4', '1 4 5'],
    ['C9sus4', '1 4 7 9'],
    ['C5', '1 5'],
  ])('takes of %s the degrees %s', (symbol, degrees) => expect(rightDegrees(symbol)).toBe(degrees));

  it.each([
    ['C7', '1 3 7'],
    ['Cm7♭5', '3 5 7'],
    ['Cdim7', '3 5 7'],
    ['C9', '3 7 9'],
    ['C13', '3 7 13'],
    ['C6', '1 3 6'],
  ])('takes of %s in three notes the degrees %s', (symbol, degrees) =>
    expect(rightDegrees(symbol, { fullness: 3 })).toBe(degrees),
  );

  it.each([
    ['C13', '1 3 7 9 13'],
    ['C9', '1 3 5 7 9'],
    ['C11', '1 5 7 9 11'],
  ])('takes of %s in five notes the degrees %s', (symbol, degrees) =>
    expect(rightDegrees(symbol, { fullness: 5 })).toBe(degrees),
  );

  it('leaves a note out where the span has no room for all', () => {
    // computed: of the inversions of C7 root position alone spans more than a major sixth, and none fits a fifth.
    expect(rights('C7', { spanSemitones: 9, rightHighest: 72 })).toEqual([
      '55 58 60 64',
      '58 60 64 67',
      '64 67 70 72',
    ]);
    expect(rights('C7', { spanSemitones: 7, rightHighest: 72 })).toEqual(['58 60 64']);
  });

  it('holds a shell of third and seventh, sixth or fifth (common practice)', () => {
    expect(rightDegrees('C7', { manner: 'shell' })).toBe('3 7');
    expect(rightDegrees('C6', { manner: 'shell' })).toBe('3 6');
    expect(rightDegrees('Cm', { manner: 'shell' })).toBe('3 5');
    expect(rightDegrees('C7sus4', { manner: 'shell' })).toBe('4 7');
    expect(rightDegrees('C11', { manner: 'shell' })).toBe('7 11');
    expect(rightDegrees('C5', { manner: 'shell' })).toBe('1 5');
  });

  it('leaves the root to the bass in rootless chords, unless the bass is another note', () => {
    expect(rightDegrees('C9', { manner: 'rootless' })).toBe('3 5 7 9');
    expect(rightDegrees('C13', { manner: 'rootless' })).toBe('3 7 9 13');
    expect(rightDegrees('C', { manner: 'rootless' })).toBe('3 5');
    expect(rightDegrees('C7/E', { manner: 'rootless' })).toBe('1 3 5 7');
    expect(rightDegrees('C5', { manner: 'rootless' })).toBe('1 5');
  });

  it('opens a chord by dropping the second voice from the top where a tenth is in reach', () =>
    // computed: from the first inversion (E G C) it would need a span of 17
    expect(rights('C', { manner: 'open', spanSemitones: 16 })).toEqual(['60 67 76', '64 72 79']));

  it('opens a chord within an octave by leaving the dropped voice to the bass', () => {
    expect(rights('C', { manner: 'open' })).toEqual(['55 64', '67 76']);
    expect(rights('C7', { manner: 'open' })).toEqual(['55 58 64', '67 70 76']);
  });

  it('is in close position where an open one is out of reach', () =>
    expect(rights('C/D', { manner: 'open' })).toEqual(rights('C/D')));
});

describe('the left hand', () => {
  it('holds the bass alone, with its octave, its fifth or its tenth', () => {
    expect(lefts('Cm7')).toEqual(['36', '48']);
    expect(lefts('Cm7', { bass: 'octave' })).toEqual(['36 48']);
    expect(lefts('Cm7', { bass: 'fifth' })).toEqual(['36 43']);
    expect(lefts('Cm7♭5', { bass: 'fifth' })).toEqual(['36 42']);
    expect(lefts('Cm7', { bass: 'tenth', spanSemitones: 16 })).toEqual(['36 51']);
  });

  it('has an octave for every bass in the default settings', () => {
    for (const root of ROOTS) {
      const name = { root, quality: 'major', tensions: [] } as const;
      for (const voicing of voicingCandidates(name, settings({ bass: 'octave' })))
        expect(heldKeys(voicing).left.length).toBe(2);
    }
  });

  it('plays a slash bass, with a fifth or tenth over it only where the chord has that note', () => {
    expect(lefts('C/E')).toEqual(['28', '40', '52']);
    expect(lefts('C/E', { bass: 'fifth' })).toEqual(['28', '40', '52']);
    expect(lefts('Am7/G', { bass: 'fifth' })).toEqual(['31', '43']);
    expect(lefts('Fmaj7/A', { bass: 'fifth' })).toEqual(['33 40', '45 52']);
    expect(lefts('C/E', { bass: 'tenth', spanSemitones: 16 })).toEqual(['28 43']);
  });

  it('holds the bass alone where what it adds is out of reach', () => {
    expect(lefts('C', { bass: 'octave', spanSemitones: 11 })).toEqual(['36', '48']);
    expect(lefts('C', { bass: 'tenth' })).toEqual(['36', '48']);
    expect(lefts('C5', { bass: 'tenth', spanSemitones: 16 })).toEqual(['36', '48']);
  });

  it('holds the shell, up to just under the right hand, where someone else plays the bass', () =>
    expect(lefts('G7', { bass: 'elsewhere' })).toEqual(['29 35', '35 41', '41 47', '47 53']));
});

describe('voicingOfKeys', () => {
  it('keeps the keys as they are, low to high, foreign ones too', () =>
    expect(voicingOfKeys(chord('C/D'), { left: [38, 62], right: [61, 66, 69, 64] })).toEqual([
      { keyNumber: 38, degree: 1, hand: 'left' },
      { keyNumber: 61, degree: 9, hand: 'right' },
      { keyNumber: 62, degree: 1, hand: 'left' },
      { keyNumber: 64, degree: 3, hand: 'right' },
      { keyNumber: 66, degree: 11, hand: 'right' },
      { keyNumber: 69, degree: 13, hand: 'right' },
    ]));

  it('holds nothing for N.C.', () =>
    expect(voicingOfKeys('no-chord', { left: [36], right: [60] })).toEqual([]));
});
