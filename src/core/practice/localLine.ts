import type { Seconds } from '../time/ticks.ts';

/** A value at a time. */
export type TimedValue = { readonly atSec: Seconds; readonly value: number };

/**
 * The values smoothed: at every time the line that fits best those within `halfWidthSec`, nearer
 * ones with more weight (tricube, as in Cleveland 1979), so that the edges are not flattened. Where
 * values lie too far or too close together for a line, their mean; without any in reach, the
 * nearest one. `points` ascend by time and there is at least one.
 */
export function localLine(
  points: readonly TimedValue[],
  halfWidthSec: Seconds,
): (atSec: Seconds) => number {
  if (points.length === 0) throw new Error('no line without points');
  let first = 0;
  return (atSec) => {
    // Times are mostly asked for in ascending order.
    if ((points[first - 1]?.atSec ?? -Infinity) >= atSec - halfWidthSec) first = 0;
    while (first < points.length - 1 && points[first]!.atSec < atSec - halfWidthSec) first++;
    return lineAt(points, first, atSec, halfWidthSec);
  };
}

function lineAt(
  points: readonly TimedValue[],
  first: number,
  atSec: Seconds,
  halfWidthSec: Seconds,
): number {
  let [weights, times, values, squares, products] = [0, 0, 0, 0, 0];
  for (let i = first; points[i] && points[i]!.atSec < atSec + halfWidthSec; i++) {
    const { atSec: pointSec, value } = points[i]!;
    const away = pointSec - atSec;
    const weight = Math.max(0, 1 - Math.abs(away / halfWidthSec) ** 3) ** 3;
    weights += weight;
    times += weight * away;
    values += weight * value;
    squares += weight * away * away;
    products += weight * away * value;
  }
  if (weights === 0) return nearestValue(points, first, atSec);
  const determinant = weights * squares - times * times;
  const isLine = determinant > 1e-3 * weights * weights * halfWidthSec * halfWidthSec;
  return isLine ? (values * squares - times * products) / determinant : values / weights;
}

function nearestValue(points: readonly TimedValue[], near: number, atSec: Seconds): number {
  const [before, after] = [points[near - 1], points[near]!];
  const isBefore = before && atSec - before.atSec < Math.abs(after.atSec - atSec);
  return isBefore ? before.value : after.value;
}
