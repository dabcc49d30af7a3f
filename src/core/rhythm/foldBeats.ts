import { barTicks, beatLengths, beatStarts, type Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { PlacedStroke } from './foldPlacing.ts';
import type { Division } from './pattern.ts';
import { type Swing, swungTick, takesSwing } from './swing.ts';

/** Divisions that are tried: those of a pattern, and 12, which holds sixteenths and triplets at once. */
export type TriedDivision = Division | 12;

/**
 * Strokes this much before a beat belong to it rather than to the last step of the beat before: half a
 * thirty-second, or what uneven playing needs, but no more than half a sixteenth.
 */
function earlyTicks(spread: Ticks): Ticks {
  return Math.min(60, Math.max(30, 2.5 * spread));
}

/** No stroke further than this (or three spreads, if that is more) from a step is played on it. */
const REACH_TICKS: Ticks = 40;

/** What the strokes are read against: their spread and common lateness in ticks, and the swing. */
export type Reading = {
  readonly meter: Meter;
  readonly spread: Ticks;
  readonly latency: number;
  readonly swing: Swing;
};

/** How far from a step a stroke may lie to be played on it. */
export function reachOf(spread: Ticks): Ticks {
  return Math.max(REACH_TICKS, 3 * spread);
}

/** One beat of the folded bars with what is played in it, in time order; `repeats` is how often the beat comes. */
export type HeardBeat = {
  readonly start: Ticks;
  readonly length: Ticks;
  readonly repeats: number;
  readonly strokes: readonly HeardInBeat[];
};

/** `offset` in ticks from the beat, `repeat` which time the beat comes, `source` by number. */
type HeardInBeat = { readonly offset: number; readonly repeat: number; readonly source: number };

/** The beats of `bars` bars laid over each other as often as they come in `barsHeard`. */
export function heardBeats(
  strokes: readonly PlacedStroke[],
  reading: Pick<Reading, 'meter' | 'latency' | 'spread'>,
  bars: number,
  barCount: number,
): HeardBeat[] {
  const { meter, latency } = reading;
  const early = earlyTicks(reading.spread);
  const bar = barTicks(meter);
  const starts = beatStarts(meter);
  const lengths = beatLengths(meter);
  const period = bars * bar;
  const beats = Array.from({ length: bars * starts.length }, (_, i) => ({
    start: Math.floor(i / starts.length) * bar + starts[i % starts.length]!,
    length: lengths[i % lengths.length]!,
    repeats: Math.ceil((barCount - Math.floor(i / starts.length)) / bars),
    strokes: [] as HeardInBeat[],
  }));
  const numbers = new Map<string, number>();
  for (const { tick, source } of strokes) {
    const number = numbers.get(source) ?? numbers.size;
    numbers.set(source, number);
    const at = tick - latency + early;
    const repeat = Math.floor(at / period);
    const inPeriod = at - repeat * period;
    const beat = beats.findLast((b) => b.start <= inPeriod);
    if (beat && repeat >= 0 && repeat < beat.repeats)
      beat.strokes.push({ offset: inPeriod - early - beat.start, repeat, source: number });
  }
  return beats;
}

/** Where the steps of a divided beat sound, in ticks from the beat: swung where swing applies. */
export function soundingOffsets(
  beat: Pick<HeardBeat, 'start' | 'length'>,
  division: TriedDivision,
  { meter, swing }: Pick<Reading, 'meter' | 'swing'>,
): number[] {
  const swings = takesSwing(beat.length, division);
  return Array.from({ length: division }, (_, step) => {
    const straight = (step * beat.length) / division;
    return swings ? swungTick(beat.start + straight, meter, swing) - beat.start : straight;
  });
}

/** Index of the step that sounds nearest to a place in the beat. */
export function nearestStep(offsets: readonly number[], offset: number): number {
  let best = 0;
  for (let step = 1; step < offsets.length; step++)
    if (Math.abs(offset - offsets[step]!) < Math.abs(offset - offsets[best]!)) best = step;
  return best;
}
