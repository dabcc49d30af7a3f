import type { KeyNumber, Semitones } from '../harmony/pitch.ts';
import type { HandName } from './voicing.ts';

/** Thumb 1 to little finger 5. */
export type Finger = 1 | 2 | 3 | 4 | 5;

/**
 * The usual fingering of a chord that one hand holds, one finger for each key from the lowest up
 * (common practice, a suggestion: hands differ). Right hand: triads and sevenths in close position,
 * that is three or four keys within an octave. Left hand: octaves and fifths. Undefined for others.
 * `keyNumbers` ascend.
 */
export function suggestedFingering(
  keyNumbers: readonly KeyNumber[],
  hand: HandName,
): readonly Finger[] | undefined {
  const gaps = keyNumbers.slice(1).map((key, i) => key - keyNumbers[i]!);
  return hand === 'right' ? rightFingering(gaps) : leftFingering(gaps);
}

function rightFingering(gaps: readonly Semitones[]): readonly Finger[] | undefined {
  const top = gaps.at(-1);
  if (top === undefined || gaps.reduce((sum, gap) => sum + gap, 0) > 12) return undefined;
  // A fourth at the top of a triad leaves the second finger in the middle, a third the third finger.
  if (gaps.length === 2) return top >= 5 ? [1, 2, 5] : [1, 3, 5];
  // The fourth finger stands beside the fifth only on a second.
  if (gaps.length === 3) return top <= 2 ? [1, 2, 4, 5] : [1, 2, 3, 5];
  return undefined;
}

function leftFingering(gaps: readonly Semitones[]): readonly Finger[] | undefined {
  const isOctaveOrFifth = gaps.length === 1 && (gaps[0] === 12 || gaps[0] === 7);
  return isOctaveOrFifth ? [5, 1] : undefined;
}
