import type { Semitones } from '../harmony/pitch.ts';
import type { Seconds } from '../time/ticks.ts';

/**
 * What one hand can do, as an estimate for an average player. `spanSemitones`: from thumb to little
 * finger. `strikeGapSec`: shortest time from one hit to the next on other keys. `repeatGapSec`: the
 * same on the same key. `leapPerSec`: how far the hand can move in a second, in semitones beyond
 * what lies under it.
 */
export type HandLimits = {
  readonly spanSemitones: Semitones;
  readonly strikeGapSec: Seconds;
  readonly repeatGapSec: Seconds;
  readonly leapPerSec: number;
};

/**
 * The limits when nothing is known of the player: an octave, ten strikes
 * a second on other keys and seven on the same (docs/sources.md#hand-limits: trills 10 to 13, single
 * finger 5 to 7 a second, from memory), five octaves of leaping a second (common practice).
 */
export const HAND_LIMITS: HandLimits = {
  spanSemitones: 12,
  strikeGapSec: 1 / 10,
  repeatGapSec: 1 / 7,
  leapPerSec: 60,
};

/** Between which a player's limits may be set; outside nothing that plays is a hand. */
export const HAND_LIMIT_RANGES: Readonly<
  Record<keyof HandLimits, { readonly lowest: number; readonly highest: number }>
> = {
  spanSemitones: { lowest: 5, highest: 19 },
  strikeGapSec: { lowest: 1 / 20, highest: 1 },
  repeatGapSec: { lowest: 1 / 20, highest: 1 },
  leapPerSec: { lowest: 6, highest: 240 },
};

/** Whether limits lie in `HAND_LIMIT_RANGES`. */
export function areHandLimits(limits: Readonly<Record<keyof HandLimits, unknown>>): boolean {
  return (Object.keys(HAND_LIMIT_RANGES) as (keyof HandLimits)[]).every((name) => {
    const value = limits[name];
    const { lowest, highest } = HAND_LIMIT_RANGES[name];
    return typeof value === 'number' && value >= lowest && value <= highest;
  });
}

/** A hand's lowest and highest key, or its place in semitones from anywhere. */
export type HandReach = { readonly lowest: number; readonly highest: number };

/** How far a hand must move from one reach to the next, in semitones; 0 where both lie under it at once. */
export function handShift(from: HandReach, to: HandReach, span: Semitones): Semitones {
  const a = thumbRange(from, span);
  const b = thumbRange(to, span);
  return Math.max(0, a.least - b.most, b.least - a.most);
}

/** Where the lower edge of the hand may lie to cover a reach. */
function thumbRange({ lowest, highest }: HandReach, span: Semitones) {
  return { least: Math.min(lowest, highest - span), most: lowest };
}
