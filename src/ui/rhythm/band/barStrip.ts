import type { Band } from '../../../core/rhythm/band.ts';
import type { BandBars } from '../../../core/rhythm/strokes.ts';

/** One bar of the strip: how much is played in it, 0 to 1 of the fullest, and what the fold says of it. */
export type StripBar = {
  readonly fullness: number;
  readonly state: 'outside' | 'agrees' | 'differs';
};

/** How many notes begin in each bar, from none to the fullest bar's as 1. */
function fullnesses({ bars, tracks }: Band): number[] {
  const counts = bars.map(() => 0);
  for (const { startTick } of tracks.flatMap((track) => track.notes)) {
    const bar = bars.findLastIndex((each) => each.startTick <= startTick);
    counts[Math.max(bar, 0)]!++;
  }
  const most = Math.max(1, ...counts);
  return counts.map((count) => count / most);
}

/**
 * The bars of a band for the strip. `agreement` tells of the chosen bars from the first on how far
 * each agrees with the pattern; a bar agrees from `agreeing` on.
 */
export function stripBars(
  band: Band,
  chosen: BandBars,
  agreement: readonly number[],
  agreeing: number,
): StripBar[] {
  return fullnesses(band).map((fullness, bar) => {
    if (bar < chosen.firstBar || bar > chosen.lastBar) return { fullness, state: 'outside' };
    const agrees = (agreement[bar - chosen.firstBar] ?? 0) >= agreeing;
    return { fullness, state: agrees ? 'agrees' : 'differs' };
  });
}

/** The bar at a share of the strip's width, 0 to 1; beyond its ends the first or the last. */
export function barAtShare(bars: number, share: number): number {
  return Math.min(Math.max(Math.floor(share * bars), 0), bars - 1);
}

/** The range between two bars, whichever comes first. */
export function rangeBetween(a: number, b: number): BandBars {
  return { firstBar: Math.min(a, b), lastBar: Math.max(a, b) };
}
