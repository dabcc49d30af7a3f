import type { Seconds } from '../time/ticks.ts';

/**
 * How some hits lie in time, in milliseconds. `meanMs` is how late they are on average (early is
 * negative), absent without hits; `spreadMs` is how far they scatter around that (the sample
 * standard deviation), absent with fewer than two hits.
 */
export type Deviations = {
  readonly hits: number;
  readonly meanMs?: number;
  readonly spreadMs?: number;
};

/** See `Deviations`; played − expected of each hit, in seconds. */
export function deviationsOf(deviationsSec: readonly Seconds[]): Deviations {
  const hits = deviationsSec.length;
  if (hits === 0) return { hits };
  const meanSec = meanOf(deviationsSec);
  if (hits === 1) return { hits, meanMs: 1000 * meanSec };
  const squares = deviationsSec.reduce((sum, each) => sum + (each - meanSec) ** 2, 0);
  return { hits, meanMs: 1000 * meanSec, spreadMs: 1000 * Math.sqrt(squares / (hits - 1)) };
}

/** The arithmetic mean; there must be a value. */
export function meanOf(values: readonly number[]): number {
  if (values.length === 0) throw new Error('nothing has no mean');
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
