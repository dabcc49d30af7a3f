import type { Seconds } from '../core/time/ticks.ts';

/** Beats further than this from the steady row, as a share of a beat, were not played to a click … */
const FARTHEST = 0.12;

/** … unless only so many of them are: slips of the tracking. */
const SLIPS = 0.1;

/** Fewer beats than this say nothing of a click. */
const FEWEST = 12;

/** The row is taken as steady where the beats lie within this share of a beat of it, by root mean square. */
const SPREAD = 0.04;

/**
 * Beats of a band that played to a click: where one tempo and phase fits nearly all of them, the
 * whole row by least squares, from the first to the last; others come back as they are. The fit leaves
 * out slips and is done again on what remains.
 */
export function steadied(beats: readonly Seconds[], mayRefit: boolean): readonly Seconds[] {
  if (!mayRefit || beats.length < FEWEST) return beats;
  const intervals = beats.slice(1).map((beat, i) => beat - beats[i]!);
  let interval = intervals.toSorted((a, b) => a - b)[intervals.length >> 1]!;
  let phase = beats[beats.length >> 1]!;
  let kept: { n: number; sec: Seconds }[] = [];
  for (let round = 0; round < 6; round++) {
    kept = beats
      .map((sec) => ({ n: Math.round((sec - phase) / interval), sec }))
      .filter(({ n, sec }) => Math.abs(sec - phase - n * interval) < FARTHEST * interval);
    if (kept.length < (1 - 3 * SLIPS) * beats.length) return beats;
    ({ interval, phase } = lineThrough(kept));
  }
  const rms = Math.sqrt(
    kept.reduce((sum, { n, sec }) => sum + (sec - phase - n * interval) ** 2, 0) / kept.length,
  );
  if (kept.length < (1 - SLIPS) * beats.length || rms > SPREAD * interval) return beats;
  const first = Math.round((beats[0]! - phase) / interval);
  const last = Math.round((beats.at(-1)! - phase) / interval);
  // A slip that inserts or drops a beat would count the bars anew: such rows are left alone.
  if (last - first !== beats.length - 1) return beats;
  return beats.map((_, k) => phase + (first + k) * interval);
}

/** Least squares of sec over n. */
function lineThrough(points: readonly { readonly n: number; readonly sec: Seconds }[]): {
  interval: Seconds;
  phase: Seconds;
} {
  const meanN = points.reduce((sum, { n }) => sum + n, 0) / points.length;
  const meanSec = points.reduce((sum, { sec }) => sum + sec, 0) / points.length;
  let covariance = 0;
  let variance = 0;
  for (const { n, sec } of points) {
    covariance += (n - meanN) * (sec - meanSec);
    variance += (n - meanN) ** 2;
  }
  const interval = covariance / variance;
  return { interval, phase: meanSec - meanN * interval };
}
