import { barTicks, beatLengths, type Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { StrokeTone } from './sources.ts';

/**
 * One attack as it was heard, tapped or read from a file. `at` and `length` are in the unit of the
 * beats it is folded on (ticks or seconds); `strength` 0 to 1; `what` it sounds, where that matters;
 * `source` names the source it belongs to, one for all where it is left out.
 */
export type HeardStroke = {
  readonly at: number;
  readonly length?: number;
  readonly strength: number;
  readonly what?: readonly StrokeTone[];
  readonly source?: string;
};

/** A heard stroke in score time: `tick` from the first downbeat, not rounded, early and late as played. */
export type PlacedStroke = {
  readonly tick: number;
  readonly lengthTicks?: number;
  readonly strength: number;
  readonly what: readonly StrokeTone[];
  readonly source: string;
};

/** Source of strokes that name none. */
export const ONLY_SOURCE = 'strokes';

/**
 * Whole bars that the beats cover. The last beat is the end of the last bar where it completes one;
 * where instead a bar's last beat is the last, that bar counts too and its end is extrapolated.
 */
export function barsHeard(beats: readonly number[], meter: Meter): number {
  const perBar = beatLengths(meter).length;
  if (beats.length < 2) return 0;
  if (perBar > 1 && beats.length % perBar === 0) return beats.length / perBar;
  return Math.floor((beats.length - 1) / perBar);
}

/** Index of the last beat at or before a time, held between the first and the last but one. */
function beatBefore(beats: readonly number[], time: number): number {
  let low = 0;
  let high = beats.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (beats[middle]! <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}

function checkAscending(beats: readonly number[]): void {
  const wrong = beats.findIndex((beat, i) => i > 0 && !(beat > beats[i - 1]!));
  if (wrong >= 0) throw new Error(`beats must ascend: ${beats[wrong - 1]}, ${beats[wrong]}`);
}

/**
 * The strokes in score time, ascending: each is placed between the beats around it, so that a
 * drifting tempo does not matter. `beats` are the felt beats of the meter from a downbeat on; time
 * goes on evenly before the first and after the last. Throws on beats that do not ascend.
 */
export function placeStrokes(
  strokes: readonly HeardStroke[],
  beats: readonly number[],
  meter: Meter,
): PlacedStroke[] {
  checkAscending(beats);
  if (beats.length < 2) return [];
  const lengths = beatLengths(meter);
  const starts = beats.map(
    (_, i) =>
      Math.floor(i / lengths.length) * barTicks(meter) +
      lengths.slice(0, i % lengths.length).reduce((sum, length) => sum + length, 0),
  );
  const ticksPerUnit = (i: number): Ticks =>
    lengths[i % lengths.length]! / (beats[i + 1]! - beats[i]!);
  return strokes
    .map(({ at, length, strength, what = [], source = ONLY_SOURCE }) => {
      const i = beatBefore(beats, at);
      const tick = starts[i]! + (at - beats[i]!) * ticksPerUnit(i);
      const lengthTicks = length === undefined ? {} : { lengthTicks: length * ticksPerUnit(i) };
      return { tick, ...lengthTicks, strength, what, source };
    })
    .toSorted((a, b) => a.tick - b.tick);
}
