import type { Seconds } from '../time/ticks.ts';

/** How well a hit is in time, best first; `off` is outside every band. */
export const GRADES = ['very-good', 'good', 'fair', 'off'] as const;

export type Grade = (typeof GRADES)[number];

/** Farthest a hit of each band may lie from its place, early or late. */
export type ToleranceBands = Readonly<Record<Exclude<Grade, 'off'>, Seconds>>;

/**
 * How wide the bands are, as multiples of the shift that is just noticed: at a gap of 500 ms, where
 * that is 12.5 ms, 20 ms are very good, 35 good and 50 fair (docs/sources.md#timing-tolerance).
 */
const BAND_WIDTHS: ToleranceBands = { 'very-good': 1.6, good: 2.8, fair: 4 };

/** Players take 10 ms of delay for none (Jack and others 2018): no band is narrower. */
export const NARROWEST_BAND_SEC: Seconds = 0.01;

/**
 * The shift of one hit in an even row that listeners just notice: 6 ms where hits are up to 240 ms
 * apart, 2.5 % of the gap beyond (Friberg & Sundberg 1995). `gapSec` must be positive.
 */
export function noticeableShiftSec(gapSec: Seconds): Seconds {
  if (!(gapSec > 0)) throw new Error(`hits cannot follow each other after ${gapSec} s`);
  return Math.max(0.006, 0.025 * gapSec);
}

/**
 * The bands of tolerance for hits that are `gapSec` apart: they follow what can be heard, so they
 * narrow as hits follow each other faster, down to a gap of 240 ms.
 */
export function toleranceBands(gapSec: Seconds): ToleranceBands {
  const width = (grade: keyof ToleranceBands) =>
    Math.max(NARROWEST_BAND_SEC, BAND_WIDTHS[grade] * noticeableShiftSec(gapSec));
  return { 'very-good': width('very-good'), good: width('good'), fair: width('fair') };
}

/** The best band that a deviation (early negative) of a hit lies in. */
export function gradeOf(deviationSec: Seconds, gapSec: Seconds): Grade {
  const bands = toleranceBands(gapSec);
  const distance = Math.abs(deviationSec);
  if (distance <= bands['very-good']) return 'very-good';
  if (distance <= bands.good) return 'good';
  return distance <= bands.fair ? 'fair' : 'off';
}
