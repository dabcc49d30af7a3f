import * as fc from 'fast-check';
import {
  type Chord,
  type ChordQuality,
  QUALITY_INTERVALS,
  TENSION_INTERVALS,
  type Tension,
} from '../../src/core/harmony/chord.ts';
import { type PitchClass, samePitchClass } from '../../src/core/harmony/pitch.ts';

const LETTERS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const;

/** The 35 roots that can be written: seven letters with up to two flats or sharps. */
export const ROOTS: readonly PitchClass[] = LETTERS.flatMap((letter) =>
  [-2, -1, 0, 1, 2].map((alteration) => ({ letter, alteration })),
);

/** Every chord quality. */
export const QUALITIES = Object.keys(QUALITY_INTERVALS) as readonly ChordQuality[];

const TENSIONS = ['♭9', '9', '♯9', '11', '♯11', '♭13', '13'] as const satisfies readonly Tension[];

if (TENSIONS.length !== Object.keys(TENSION_INTERVALS).length)
  throw new Error('a tension is missing');

/** The 128 sets of tensions, each in ascending order. */
export const TENSION_SETS: readonly (readonly Tension[])[] = Array.from(
  { length: 128 },
  (_, bits) => TENSIONS.filter((_tension, i) => (bits >> i) & 1),
);

/** Every quality with every set of tensions on one root, without a bass. */
export function chordsOn(root: PitchClass): Chord[] {
  return QUALITIES.flatMap((quality) =>
    TENSION_SETS.map((tensions) => ({ root, quality, tensions })),
  );
}

/** Any chord, half of them with a bass that is not the root. */
export function anyChord(): fc.Arbitrary<Chord> {
  return fc
    .record({
      root: fc.constantFrom(...ROOTS),
      quality: fc.constantFrom(...QUALITIES),
      tensions: fc.constantFrom(...TENSION_SETS),
      bass: fc.option(fc.constantFrom(...ROOTS), { nil: undefined }),
    })
    .map(({ bass, ...chord }) =>
      bass && !samePitchClass(bass, chord.root) ? { ...chord, bass } : chord,
    );
}
