import { barTicks, beatLengths, type Meter } from '../time/meter.ts';
import { type Seconds, TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import { AGREEING, barAgreement, countedBars, timesHeard } from './foldAgreement.ts';
import { heardBeats, type Reading } from './foldBeats.ts';
import { fitBeat } from './foldGrid.ts';
import { median, spreadOf } from './foldNoise.ts';
import { type Period, type PeriodEvidence, periodEvidence, shortestPeriod } from './foldPeriod.ts';
import { barsHeard, type HeardStroke, type PlacedStroke, placeStrokes } from './foldPlacing.ts';
import { MOST_LATENCY_SEC, POOLED_DIVISIONS, readStrokes } from './foldReading.ts';
import { type FoldStep, foldSteps, type SteppedStroke, stepStrokes } from './foldSteps.ts';
import { groupBy } from './groupBy.ts';
import { DIVISIONS, type Division } from './pattern.ts';
import type { StrokeTone } from './sources.ts';
import { STRAIGHT, type Swing } from './swing.ts';

export type { HeardStroke } from './foldPlacing.ts';

/**
 * What a source does on one step. `at` in ticks from the pattern's start, unswung. `presence`: share
 * of the counted bars in which it is played, 0 to 1; of those strokes the mean `strength`, the mean
 * `deviation` from the step in ticks (late is positive, the common latency taken off), the middle
 * `length` in ticks where lengths are known, and the commonest `what`.
 */
export type FoldedStep = {
  readonly at: Ticks;
  readonly presence: number;
  readonly strength: number;
  readonly deviation: number;
  readonly length?: Ticks;
  readonly what: readonly StrokeTone[];
};

/** Steps ascend; every step on which the source is heard in a counted bar is there, however rarely. */
export type FoldedSource = { readonly id: string; readonly steps: readonly FoldedStep[] };

/**
 * What many bars have in common, with the evidence for it. `bars` is the period, `divisions` has one
 * entry for each of its felt beats. `agreement` tells for each bar heard how far it agrees with the
 * pattern, 0 to 1 (an F-measure over strokes weighed by strength); a bar agrees from `AGREEING` on,
 * and only the agreeing bars are counted in the sources (all, where fewer than half agree).
 * `spread` is how unevenly the band plays (standard deviation) and `latency` how late all of it is,
 * in ticks; `offGrid` the share of strokes that lie on no step or beside another of their source on one. `periods` holds for each period how
 * much better than one bar it explains what is heard, in nats.
 */
export type Fold = {
  readonly meter: Meter;
  readonly bars: Period;
  readonly divisions: readonly Division[];
  readonly swing: Swing;
  readonly sources: readonly FoldedSource[];
  readonly agreement: readonly number[];
  readonly barsAgreeing: number;
  readonly spread: Ticks;
  readonly latency: number;
  readonly offGrid: number;
  readonly periods: readonly PeriodEvidence[];
};

/**
 * `period`: bars that the pattern shall have, instead of the shortest that repeats. `beatSec`: how long
 * a felt beat lasts, where strokes and beats are not in seconds.
 */
export type FoldOptions = { readonly period?: Period; readonly beatSec?: Seconds };

/** Strokes so much outside the bars can still belong to their first or last beat: a sixteenth, or as late as players are. */
const BEFORE_TICKS: Ticks = TICKS_PER_QUARTER / 4;

function beforeTicks(tickSec: Seconds): Ticks {
  return Math.max(BEFORE_TICKS, MOST_LATENCY_SEC / tickSec);
}

/** Longer beats than this nobody counts: the beats are in another unit, and at 120 to the minute if nothing is said. */
const LONGEST_BEAT_SEC: Seconds = 10;
const USUAL_BEAT_SEC: Seconds = 0.5;

/** How long a tick lasts: see `FoldOptions`. */
function tickSecOf(beats: readonly number[], meter: Meter, { beatSec }: FoldOptions): Seconds {
  const lengths = beatLengths(meter);
  const beatTicks = barTicks(meter) / lengths.length;
  const gap = (beats.at(-1)! - beats[0]!) / (beats.length - 1);
  return (beatSec ?? (gap <= LONGEST_BEAT_SEC ? gap : USUAL_BEAT_SEC)) / beatTicks;
}

/** Step by step of one bar: in which bars each source plays each thing there. */
function stepHistories(
  strokes: readonly PlacedStroke[],
  reading: Reading,
  barCount: number,
): boolean[][] {
  const divisions = heardBeats(strokes, reading, 1, barCount).map(
    (beat) => fitBeat(beat, POOLED_DIVISIONS, reading).division,
  );
  const stepped = stepStrokes(strokes, foldSteps(divisions, reading), reading, barCount);
  const cells = groupBy(stepped, ({ stroke, step }) =>
    [step, stroke.source, ...stroke.what].join(' '),
  );
  return [...cells.values()].map((own) => {
    const history = Array.from({ length: barCount }, () => false);
    for (const { bar } of own) history[bar] = true;
    return history;
  });
}

/** The commonest of the tones, the first of equals. */
function commonestTone(strokes: readonly SteppedStroke[]): readonly StrokeTone[] {
  const ways = [...groupBy(strokes, (s) => s.stroke.what.join(' ')).values()];
  const most = ways.reduce((best, way) => (way.length > best.length ? way : best));
  return most[0]!.stroke.what;
}

function foldedStep(strokes: readonly SteppedStroke[], step: FoldStep, times: number): FoldedStep {
  const mean = (value: (s: SteppedStroke) => number) =>
    strokes.reduce((sum, s) => sum + value(s), 0) / strokes.length;
  const length = median(
    strokes.flatMap(({ stroke }) => (stroke.lengthTicks === undefined ? [] : [stroke.lengthTicks])),
  );
  return {
    at: step.at,
    presence: strokes.length / times,
    strength: mean((s) => s.stroke.strength),
    deviation: mean((s) => s.deviation),
    ...(length === undefined ? {} : { length: Math.max(1, Math.round(length)) }),
    what: commonestTone(strokes),
  };
}

function foldedSources(
  strokes: readonly SteppedStroke[],
  steps: readonly FoldStep[],
  counted: readonly number[],
  period: Period,
): FoldedSource[] {
  const isCounted = new Set(counted);
  const times = timesHeard(counted, period);
  const bySource = groupBy(
    strokes.filter((s) => isCounted.has(s.bar)),
    (s) => s.stroke.source,
  );
  return [...bySource].map(([id, own]) => ({
    id,
    steps: [...groupBy(own, (s) => s.step)]
      .toSorted(([a], [b]) => a - b)
      .map(([step, onStep]) => foldedStep(onStep, steps[step]!, times[onStep[0]!.bar % period]!)),
  }));
}

/** Nothing heard: one bar in whole beats. */
function emptyFold(meter: Meter): Fold {
  return {
    meter,
    bars: 1,
    divisions: beatLengths(meter).map(() => 1 as const),
    swing: STRAIGHT,
    sources: [],
    agreement: [],
    barsAgreeing: 0,
    spread: 0,
    latency: 0,
    offGrid: 0,
    periods: [{ bars: 1, gain: 0 }],
  };
}

/**
 * Lays many bars over each other and finds what they have in common: the shortest repeating pattern
 * of 1, 2 or 4 bars, the division of each of its beats, the swing, and for every source and step how
 * often, how strongly, how late and how long it is played. All sources are folded together.
 *
 * `beats` are the ascending times of the felt beats of `meter` (the dotted quarters of 6/8) in the
 * unit of the strokes, from a downbeat on, and best with the end of the last bar; the tempo may
 * drift. Strokes need no order; those outside the bars are left out. A latency common to all strokes
 * is found and taken off; it is a matter of milliseconds, for which the beats' length must be known
 * (`FoldOptions`). Without strokes or without a whole bar the fold is empty, one bar long.
 * Throws on beats that do not ascend.
 *
 * The steps: how even the playing is (`spreadOf`), latency and swing (`readStrokes`), the period
 * (`shortestPeriod`), the division of each beat (`fitBeat`), then which bars agree (`barAgreement`).
 */
export function foldStrokes(
  strokes: readonly HeardStroke[],
  beats: readonly number[],
  meter: Meter,
  options: FoldOptions = {},
): Fold {
  const barCount = barsHeard(beats, meter);
  const length = barCount * barTicks(meter);
  const all = placeStrokes(strokes, beats, meter);
  if (barCount === 0) return emptyFold(meter);
  const tickSec = tickSecOf(beats, meter, options);
  const before = beforeTicks(tickSec);
  const placed = all.filter(({ tick }) => tick >= -before && tick < length + before);
  if (placed.length === 0) return emptyFold(meter);
  const spread = spreadOf(placed, barTicks(meter));
  const reading = readStrokes(placed, barCount, meter, spread, tickSec);
  const periods = periodEvidence(stepHistories(placed, reading, barCount), barCount);
  const bars = options.period ?? shortestPeriod(periods);
  const divisions = heardBeats(placed, reading, bars, barCount).map(
    (beat) => fitBeat(beat, DIVISIONS, reading).division,
  );
  const steps = foldSteps(divisions, reading);
  const stepped = stepStrokes(placed, steps, reading, barCount);
  const agreement = barAgreement(stepped, bars, barCount);
  return {
    meter,
    bars,
    divisions,
    swing: reading.swing,
    sources: foldedSources(stepped, steps, countedBars(agreement, bars), bars),
    agreement,
    barsAgreeing: agreement.filter((a) => a >= AGREEING).length,
    spread,
    latency: reading.latency,
    offGrid: 1 - stepped.length / placed.length,
    periods,
  };
}
