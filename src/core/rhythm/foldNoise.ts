import type { Ticks } from '../time/ticks.ts';
import type { PlacedStroke } from './foldPlacing.ts';
import { groupBy } from './groupBy.ts';

/** Strokes a bar apart that lie further from each other than this are not taken for the same stroke. */
const SAME_STROKE_TICKS: Ticks = 60;

/** Spread that is taken for granted below so many pairs, and the limits of what is believed. */
const FEWEST_PAIRS = 8;
const USUAL_SPREAD: Ticks = 12;
const LEAST_SPREAD: Ticks = 3;
const MOST_SPREAD: Ticks = 36;

/** Bars over which a stroke is looked for again. */
const LAGS = [1, 2, 4] as const;

/** From the middle absolute deviation to the standard deviation of a normal distribution. */
const NORMAL_MAD = 1.4826;

/** The middle of the numbers, the upper one of two; undefined for none. */
export function median(numbers: readonly number[]): number | undefined {
  return numbers.toSorted((a, b) => a - b)[numbers.length >> 1];
}

/** The one of ascending `ticks` that is nearest to `tick`; undefined for none. */
function nearest(ticks: readonly number[], tick: number): number | undefined {
  let low = 0;
  let high = ticks.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ticks[middle]! < tick) low = middle + 1;
    else high = middle;
  }
  const [before, after] = [ticks[low - 1], ticks[low]];
  if (before === undefined || after === undefined) return before ?? after;
  return tick - before <= after - tick ? before : after;
}

/** How much earlier or later each stroke comes again `lag` ticks on, for strokes that do come again. */
function returns(ticks: readonly number[], lag: Ticks): number[] {
  return ticks.flatMap((tick) => {
    const again = nearest(ticks, tick + lag);
    if (again === undefined || Math.abs(again - tick - lag) > SAME_STROKE_TICKS) return [];
    return nearest(ticks, again - lag) === tick ? [again - tick - lag] : [];
  });
}

/**
 * How unevenly the strokes are played: the standard deviation of a stroke's place from bar to bar,
 * in ticks, found without any grid from strokes of one source that come again after one, two or four
 * bars (the middle absolute difference, so that fills do not count). Between 3 (a sequencer) and 36.
 */
export function spreadOf(strokes: readonly PlacedStroke[], barLength: Ticks): Ticks {
  const moves = [...groupBy(strokes, (stroke) => stroke.source).values()].flatMap((own) => {
    const ticks = own.map((stroke) => stroke.tick);
    return LAGS.flatMap((lag) => returns(ticks, lag * barLength));
  });
  const typical = median(moves.map(Math.abs));
  if (typical === undefined || moves.length < FEWEST_PAIRS) return USUAL_SPREAD;
  const spread = (NORMAL_MAD * typical) / Math.SQRT2;
  return Math.min(MOST_SPREAD, Math.max(LEAST_SPREAD, spread));
}
