import { barTicks, beatLengths, beatStarts } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { type Reading, reachOf, soundingOffsets, type TriedDivision } from './foldBeats.ts';
import type { PlacedStroke } from './foldPlacing.ts';
import { groupBy } from './groupBy.ts';

/** A step of the folded bars: where it stands in the pattern, and where it sounds (swung). */
export type FoldStep = { readonly at: Ticks; readonly sounding: number };

/** A stroke on a step: in which bar heard, on which step (by index), how late in ticks. */
export type SteppedStroke = {
  readonly stroke: PlacedStroke;
  readonly bar: number;
  readonly step: number;
  readonly deviation: number;
};

/** All steps of so many bars, ascending; `divisions` has one entry for every felt beat of them. */
export function foldSteps(divisions: readonly TriedDivision[], reading: Reading): FoldStep[] {
  const starts = beatStarts(reading.meter);
  const lengths = beatLengths(reading.meter);
  return divisions.flatMap((division, i) => {
    const bar = Math.floor(i / starts.length) * barTicks(reading.meter);
    const beat = {
      start: bar + starts[i % starts.length]!,
      length: lengths[i % lengths.length]!,
    };
    return soundingOffsets(beat, division, reading).map((offset, step) => ({
      at: beat.start + Math.round((step * beat.length) / division),
      sounding: beat.start + offset,
    }));
  });
}

/** The step nearest to a place in the period; past the last it can be the first of the next round. */
function nearestStep(steps: readonly FoldStep[], place: number, period: Ticks) {
  let low = 0;
  let high = steps.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (steps[middle]!.sounding <= place) low = middle;
    else high = middle - 1;
  }
  const next = steps[low + 1]?.sounding ?? period;
  const before = steps[low]!.sounding;
  return next - place < place - before
    ? { step: low + 1, deviation: place - next }
    : { step: low, deviation: place - before };
}

/**
 * Puts every stroke on the step that sounds nearest to it once the common latency is taken off.
 * Left out: what lies out of reach of any step and what falls outside the bars heard. Of several
 * strokes of one source on one step in one bar the strongest is kept.
 */
export function stepStrokes(
  strokes: readonly PlacedStroke[],
  steps: readonly FoldStep[],
  reading: Reading,
  barCount: number,
): SteppedStroke[] {
  const bar = barTicks(reading.meter);
  const bars = Math.floor((steps.at(-1)?.at ?? 0) / bar) + 1;
  const period = bars * bar;
  const reach = reachOf(reading.spread);
  const placed = strokes.flatMap((stroke): SteppedStroke[] => {
    const tick = stroke.tick - reading.latency;
    const round = Math.floor(tick / period);
    const near = nearestStep(steps, tick - round * period, period);
    if (Math.abs(near.deviation) > reach) return [];
    const wraps = near.step === steps.length;
    const step = wraps ? 0 : near.step;
    const inBar = Math.floor(steps[step]!.at / bar);
    const heardIn = (round + (wraps ? 1 : 0)) * bars + inBar;
    if (heardIn < 0 || heardIn >= barCount) return [];
    return [{ stroke, bar: heardIn, step, deviation: near.deviation }];
  });
  const together = groupBy(placed, (s) => `${s.stroke.source} ${s.bar} ${s.step}`);
  return [...together.values()].map((same) =>
    same.reduce((best, s) => (s.stroke.strength > best.stroke.strength ? s : best)),
  );
}
