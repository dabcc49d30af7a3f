import type { Chord } from './chord.ts';
import type { ChordSuffix } from './chordSuffix.ts';
import { type Key, scaleOf } from './key.ts';
import type { PitchClass } from './pitch.ts';

export const DEGREES = [1, 2, 3, 4, 5, 6, 7] as const;

/** A step of the key's scale, 1 to 7. */
export type Degree = (typeof DEGREES)[number];

/** A step of the scale, raised or lowered by so many semitones: ♭7 is degree 7, alteration −1. */
export type DegreeStep = { readonly degree: Degree; readonly alteration: number };

/** A chord by the step of the scale on which it stands, free of any key; `bass` where it is not the root. */
export type ScaleChord = DegreeStep & ChordSuffix & { readonly bass?: DegreeStep };

/**
 * The steps of minor that are raised without a sign where a diminished chord stands on them: vii° and
 * vi° belong to the melodic minor scale, VII and VI to the natural one (docs/sources.md#minor-numerals).
 */
const RAISED_IN_MINOR: readonly Degree[] = [6, 7];

const DIMINISHED: readonly ChordSuffix['quality'][] = [
  'diminished',
  'diminished-seventh',
  'half-diminished-seventh',
];

function isRaised(key: Key, degree: Degree, quality: ChordSuffix['quality'] | undefined): boolean {
  return (
    key.mode === 'minor' &&
    RAISED_IN_MINOR.includes(degree) &&
    quality !== undefined &&
    DIMINISHED.includes(quality)
  );
}

/** The note of the scale on which a step counts as unaltered, for a chord of that quality or for a bass. */
function plainStep(key: Key, degree: Degree, quality?: ChordSuffix['quality']): PitchClass {
  const step = scaleOf(key)[degree - 1]!;
  return isRaised(key, degree, quality) ? { ...step, alteration: step.alteration + 1 } : step;
}

/** The note at a step of the key's scale (natural minor in minor keys), spelled. */
export function pitchClassAt(step: DegreeStep, key: Key): PitchClass {
  const plain = plainStep(key, step.degree);
  return { ...plain, alteration: plain.alteration + step.alteration };
}

/** The step of the key's scale (natural minor in minor keys) that a note is, by its letter. */
export function stepOf(pitchClass: PitchClass, key: Key): DegreeStep {
  return chordStepOf(pitchClass, key);
}

function chordStepOf(root: PitchClass, key: Key, quality?: ChordSuffix['quality']): DegreeStep {
  const degree = DEGREES.find((d) => plainStep(key, d).letter === root.letter)!;
  return { degree, alteration: root.alteration - plainStep(key, degree, quality).alteration };
}

/**
 * A chord by the step it stands on: Fm7 in C major is the fourth with a minor seventh. In minor the
 * steps are those of natural minor, but diminished chords on 6 and 7 count from the raised step.
 */
export function scaleChordOf({ root, quality, tensions, bass }: Chord, key: Key): ScaleChord {
  const step = chordStepOf(root, key, quality);
  return { ...step, quality, tensions, ...(bass ? { bass: stepOf(bass, key) } : {}) };
}

/** The chord that a scale chord is in a key: the inverse of `scaleChordOf`. */
export function chordInKey(scaleChord: ScaleChord, key: Key): Chord {
  const { degree, alteration, quality, tensions, bass } = scaleChord;
  const plain = plainStep(key, degree, quality);
  const root = { ...plain, alteration: plain.alteration + alteration };
  return { root, quality, tensions, ...(bass ? { bass: pitchClassAt(bass, key) } : {}) };
}
