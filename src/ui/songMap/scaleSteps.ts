import { type Key, type MinorForm, scaleOf } from '../../core/harmony/key.ts';
import { chromaOf, type PitchClass, type Semitones } from '../../core/harmony/pitch.ts';

/** A note of the scale with its distance above the tonic and to the next note, in semitones. */
export type ScaleStep = {
  readonly note: PitchClass;
  readonly above: Semitones;
  /** Undefined at the octave, which ends the line. */
  readonly toNext: Semitones | undefined;
};

/** The key's scale from the tonic up to its octave, with its steps: 2 a whole step, 1 a half step, 3 in harmonic minor. */
export function scaleSteps(key: Key, minorForm: MinorForm): ScaleStep[] {
  const scale = scaleOf(key, minorForm);
  const tonic = chromaOf(key.tonic);
  const above = scale.map((note) => (chromaOf(note) - tonic + 12) % 12);
  return [...scale, key.tonic].map((note, i) => {
    const here = above[i] ?? 12;
    const next = above[i + 1] ?? 12;
    return { note, above: here, toNext: i < scale.length ? next - here : undefined };
  });
}
