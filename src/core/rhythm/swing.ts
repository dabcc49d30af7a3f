import {
  barTicks,
  beatLengths,
  beatStarts,
  hasGroupedBeats,
  type Meter,
  unitTicks,
} from '../time/meter.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';

/**
 * Swing: of each pair of eighths (or sixteenths) the first lasts `ratio` times the second.
 * 1 is straight, 2 the triplet feel, 3 the dotted one.
 */
export type Swing = { readonly level: 'eighth' | 'sixteenth'; readonly ratio: number };

/** Ratios that can be set, from straight to the dotted one; those that a file may hold, the short note first too. */
export const SWING_RATIOS = { lowest: 1, highest: 3 } as const;
export const READ_SWING_RATIOS = { lowest: 1 / 4, highest: 4 } as const;

export const STRAIGHT: Swing = { level: 'eighth', ratio: 1 };

/** Length of the pair whose halves swing makes unequal. */
const PAIR_TICKS: Readonly<Record<Swing['level'], Ticks>> = {
  eighth: TICKS_PER_QUARTER,
  sixteenth: TICKS_PER_QUARTER / 2,
};

/** The shortest plain note value that is told from a tuplet: a 128th. */
const SHORTEST_PLAIN_TICKS = 15;

/**
 * Where a straight position sounds with swing. `tick` counts from any bar line of the meter and may
 * be negative; the result is a whole tick, rounded here and nowhere else.
 *
 * Inside each pair time is stretched evenly over its first half and squeezed evenly over its second,
 * so that finer steps keep their order; the ends of a pair stay where they are. Pairs are counted
 * from each felt beat. Level eighth: the pairs of eighths in a quarter, in meters over 2 and 4 only
 * (the eighths of 6/8 are not swung). Level sixteenth: the pairs of sixteenths in an eighth, in
 * every meter. What is left over at the end of a beat (the third sixteenth of a 3/16 group) stays.
 */
export function swungTick(tick: Ticks, meter: Meter, swing: Swing): Ticks {
  if (swing.ratio === 1 || (swing.level === 'eighth' && hasGroupedBeats(meter)))
    return Math.round(tick);
  const bar = Math.floor(tick / barTicks(meter)) * barTicks(meter);
  const beat = beatStarts(meter).findLastIndex((start) => start <= tick - bar);
  const beatStart = bar + (beatStarts(meter)[beat] ?? 0);
  const pair = PAIR_TICKS[swing.level];
  const pairStart = beatStart + Math.floor((tick - beatStart) / pair) * pair;
  const beatEnd = beatStart + (beatLengths(meter)[beat] ?? unitTicks(meter));
  if (pairStart + pair > beatEnd) return Math.round(tick);
  return Math.round(pairStart + swungInPair(tick - pairStart, pair, swing.ratio));
}

function swungInPair(offset: number, pair: Ticks, ratio: number): number {
  const half = pair / 2;
  const first = (pair * ratio) / (1 + ratio);
  return offset < half
    ? (offset * first) / half
    : first + ((offset - half) * (pair - first)) / half;
}

/**
 * Whether swing moves the inside of a beat that is divided into so many steps: it does where the
 * steps are plain note values (a quarter in 1, 2, 4 or 8; a dotted quarter in 3 or 6), not where
 * they are a tuplet (a quarter in 3 or 6; a dotted quarter in 2, 4 or 8): triplets stay even.
 */
export function takesSwing(beatTicks: Ticks, division: number): boolean {
  return division === 1 || Number.isInteger(Math.log2(beatTicks / division / SHORTEST_PLAIN_TICKS));
}
