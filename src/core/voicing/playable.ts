import type { KeyNumber, Semitones } from '../harmony/pitch.ts';

/** Fingers of a hand; each holds one key. */
export const FINGERS = 5;

/**
 * Lowest key number of the lower note at which an interval stays clear, by size in semitones, 1 to
 * 11; the octave and wider intervals have no limit. Handbooks differ by one to three semitones, so
 * what lies lower is a warning, never forbidden (docs/sources.md#low-interval-limits).
 */
export const LOW_INTERVAL_LIMITS: Readonly<Record<Semitones, KeyNumber>> = {
  1: 52, // E3
  2: 51, // E♭3
  3: 48, // C3
  4: 47, // B2
  5: 45, // A2
  6: 47, // B2
  7: 37, // C♯2
  8: 41, // F2
  9: 41, // F2
  10: 41, // F2
  11: 41, // F2
};

/**
 * Whether one hand can hold the keys at once: five different keys at the most, and from the lowest
 * to the highest no more than its span. A hand that holds nothing fits.
 */
export function fitsHand(keyNumbers: readonly KeyNumber[], spanSemitones: Semitones): boolean {
  if (keyNumbers.length === 0) return true;
  const isPlayable = keyNumbers.length <= FINGERS && new Set(keyNumbers).size === keyNumbers.length;
  return isPlayable && Math.max(...keyNumbers) - Math.min(...keyNumbers) <= spanSemitones;
}

/** Whether every interval between two of the keys lies at or above its low-interval limit. */
export function isClear(keyNumbers: readonly KeyNumber[]): boolean {
  return semitonesTooLow(keyNumbers) === 0;
}

/**
 * How far the keys lie under the low-interval limits: for every two of them the semitones by which
 * the lower one falls short of their interval's limit, added up. 0 where all is clear.
 */
export function semitonesTooLow(keyNumbers: readonly KeyNumber[]): Semitones {
  const keys = keyNumbers.toSorted((a, b) => a - b);
  let total = 0;
  keys.forEach((lower, i) => {
    for (const upper of keys.slice(i + 1)) {
      const limit = LOW_INTERVAL_LIMITS[upper - lower];
      if (limit !== undefined) total += Math.max(0, limit - lower);
    }
  });
  return total;
}
