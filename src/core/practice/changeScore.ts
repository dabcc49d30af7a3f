import { groupBy } from '../rhythm/groupBy.ts';
import type { Seconds } from '../time/ticks.ts';
import { deviationsOf, meanOf } from './deviations.ts';
import type { ExpectedHit } from './expectedHits.ts';
import type { HitPair } from './matchHits.ts';

/**
 * The first hits of each hand after chord changes, against all others: how much later they come on
 * average, and the standard error of that.
 */
export type ChangeScore = {
  readonly hits: number;
  readonly laterMs: number;
  readonly errorMs: number;
};

/** The hits that are their hand's first after a chord change. */
function changeHits(
  hits: readonly ExpectedHit[],
  changesSec: readonly Seconds[],
): Set<ExpectedHit> {
  const first = new Set<ExpectedHit>();
  for (const row of groupBy(hits, (hit) => hit.hand).values()) {
    let passed = 0;
    for (const hit of row.toSorted((a, b) => a.atSec - b.atSec)) {
      const before = passed;
      // Swing and rounding may put a hit a little before the change it belongs to.
      while ((changesSec[passed] ?? Infinity) <= hit.atSec + 1e-3) passed++;
      if (passed > before) first.add(hit);
    }
  }
  return first;
}

/**
 * See `ChangeScore`; undefined with fewer than two hits on either side. `changesSec` ascend, on the
 * clock of the hits; a hit belongs to the last change before it, and only its hand's first one counts.
 */
export function changeScore(
  pairs: readonly HitPair[],
  missed: readonly ExpectedHit[],
  changesSec: readonly Seconds[],
): ChangeScore | undefined {
  const first = changeHits([...pairs.map((pair) => pair.expected), ...missed], changesSec);
  const atChange = pairs.filter((pair) => first.has(pair.expected)).map((p) => p.deviationSec);
  const others = pairs.filter((pair) => !first.has(pair.expected)).map((p) => p.deviationSec);
  const [one, other] = [deviationsOf(atChange), deviationsOf(others)];
  if (one.spreadMs === undefined || other.spreadMs === undefined) return undefined;
  return {
    hits: one.hits,
    laterMs: 1000 * (meanOf(atChange) - meanOf(others)),
    errorMs: Math.hypot(one.spreadMs / Math.sqrt(one.hits), other.spreadMs / Math.sqrt(other.hits)),
  };
}
