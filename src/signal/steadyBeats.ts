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

/** How far a steady tempo is looked for from the median of a path's intervals, as a share. */
const TEMPO_REACH = 0.04;

/** Frames by which the first and last beat may be off between one tempo tried and the next. */
const LARGEST_OFF = 3;

/** No click is kept to for so many beats: a rehearsal, several songs. The search would grow with their square. */
const MOST_BEATS = 1000;

/** A steady row takes the place of a path that sees at most this much more, as a share of its gain. */
const STEADY_ENOUGH = 0.9;

/**
 * The row of one tempo and phase that sees the most probability near a path's tempo, where it sees
 * nearly as much as the path; the path itself where it does not. Where players keep to a click, this
 * mends slips that a path is drawn into (not over 1000 beats). Beats in frames of `probability`, ascending.
 */
export function steadyRow(path: readonly number[], probability: Float32Array): readonly number[] {
  if (path.length < FEWEST || path.length > MOST_BEATS) return path;
  const frames = probability.length;
  const near = probability.map((_, i) =>
    Math.log(Math.max(probability[i - 1] ?? 0, probability[i]!, probability[i + 1] ?? 0)),
  );
  const intervals = path.slice(1).map((beat, i) => beat - path[i]!);
  const median = intervals.toSorted((a, b) => a - b)[intervals.length >> 1]!;
  const step = (2 * LARGEST_OFF * median) / frames;
  const tries = Math.ceil((TEMPO_REACH * median) / step);
  let best = { mean: Number.NEGATIVE_INFINITY, interval: median, phase: 0 };
  for (let n = -tries; n <= tries; n++) {
    const interval = median + n * step;
    for (let phase = 0; phase < interval; phase += 2) {
      let sum = 0;
      let count = 0;
      for (let at = phase; at < frames; at += interval) {
        sum += near[Math.round(at)] ?? 0;
        count++;
      }
      if (sum / count > best.mean) best = { mean: sum / count, interval, phase };
    }
  }
  const level = near.reduce((sum, value) => sum + value, 0) / frames;
  const ofPath = path.reduce((sum, beat) => sum + near[beat]!, 0) / path.length;
  if (best.mean - level < STEADY_ENOUGH * (ofPath - level)) return path;
  const row: number[] = [];
  for (let at = best.phase; at < frames; at += best.interval) row.push(at);
  return row;
}
