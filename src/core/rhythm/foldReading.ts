import { barTicks, hasGroupedBeats, type Meter } from '../time/meter.ts';
import type { Seconds, Ticks } from '../time/ticks.ts';
import {
  type HeardBeat,
  heardBeats,
  nearestStep,
  type Reading,
  reachOf,
  soundingOffsets,
  type TriedDivision,
} from './foldBeats.ts';
import { type BeatFit, fitBeat } from './foldGrid.ts';
import { median } from './foldNoise.ts';
import type { PlacedStroke } from './foldPlacing.ts';
import { STRAIGHT, type Swing } from './swing.ts';

/** Share of a pair that its first half lasts: 0.5 straight, 2/3 the triplet feel. */
type LongShare = number;

/** Shares that are tried; beyond, a dotted reading is the better one, below it is not heard as swing. */
const SHARE_STEP: LongShare = 0.01;
const SHARES: readonly LongShare[] = Array.from({ length: 18 }, (_, i) => 0.53 + i * SHARE_STEP);

/** How far the fit may easily take the share from where it was tried. */
const SHARE_HOLD: LongShare = 0.03;

/** A few of them, to find the latency by. */
const COARSE_SHARES: readonly LongShare[] = [0.55, 0.6, 0.667];

/** What swing costs beside straight, in nats. */
const SWING_COST = 3;

/**
 * How late or early players and devices are is a matter of time, whatever the tempo: tappers are
 * early by 20 to 80 ms untrained (docs/sources.md#folding), devices late by as much. Standard deviation
 * that is taken for granted, and the furthest that is tried.
 */
const USUAL_LATENCY_SEC: Seconds = 0.045;
export const MOST_LATENCY_SEC: Seconds = 0.064;

/** Latencies that are tried lie so far apart; at slow tempos they reach to nearly half a sixteenth all the same. */
const LATENCY_STEP: Ticks = 8;
const LEAST_REACH: Ticks = 56;

/** 0, then early and late in turn, further and further. */
function latenciesTried(tickSec: Seconds): Ticks[] {
  const reach = Math.max(LEAST_REACH, MOST_LATENCY_SEC / tickSec);
  const late = Array.from(
    { length: Math.floor(reach / LATENCY_STEP) },
    (_, i) => (i + 1) * LATENCY_STEP,
  );
  return [0, ...late.flatMap((ticks) => [ticks, -ticks])];
}

/**
 * What a source costs in nats for each level of the meter that its strokes lie under the beat in the
 * mean: music stands on strong places more often than on weak ones (Palmer & Krumhansl 1990, docs/sources.md#folding). It
 * tells a band that is early from one that plays everything a sixteenth early.
 */
const WEAK_PLACE_COST = 6;

/** Less than this is not called swing: 12 ms at 120 beats a minute. */
const LEAST_SHARE: LongShare = 0.525;

/** Divisions for all bars laid over each other. */
export const POOLED_DIVISIONS: readonly TriedDivision[] = [1, 2, 3, 4, 6, 8, 12];

function swingOf(level: Swing['level'], share: LongShare): Swing {
  return { level, ratio: share / (1 - share) };
}

function levelsIn(meter: Meter): readonly Swing['level'][] {
  return hasGroupedBeats(meter) ? ['sixteenth'] : ['eighth', 'sixteenth'];
}

function swingsOf(meter: Meter, shares: readonly LongShare[]): Swing[] {
  return levelsIn(meter).flatMap((level) => shares.map((share) => swingOf(level, share)));
}

/** Latency and swing are the same throughout, so that of a long piece the bars with the most strokes will do. */
const MOST_BARS = 32;

/**
 * Strokes so near to the ends of the bars heard are left out: which of them belong inside hangs on the
 * latency, and readings can only be compared on the same strokes.
 */
const BORDER_TICKS: Ticks = 120;

function borderTicks(tickSec: Seconds): Ticks {
  return Math.max(BORDER_TICKS, MOST_LATENCY_SEC / tickSec);
}

/** How many levels of the meter a step lies under its beat: 0 on it, 1 on the half or a third, 2 on the quarters. */
function depthOf(step: number, division: TriedDivision): number {
  if (step === 0) return 0;
  let parts: number = division;
  let place = step;
  let depth = 0;
  while (parts % 2 === 0 && place % 2 === 0) {
    parts /= 2;
    place /= 2;
  }
  for (; parts % 2 === 0; parts /= 2) depth++;
  return depth + (parts > 1 ? 1 : 0);
}

/** See `WEAK_PLACE_COST`: the sources' mean depths, added up. `fits` has one entry for each beat. */
function weakPlaceCost(
  beats: readonly HeardBeat[],
  fits: readonly BeatFit[],
  reading: Reading,
): number {
  const sums = new Map<number, { strokes: number; depth: number }>();
  beats.forEach((beat, i) => {
    const { division } = fits[i]!;
    const offsets = soundingOffsets(beat, division, reading);
    for (const { offset, source } of beat.strokes) {
      const sum = sums.get(source) ?? { strokes: 0, depth: 0 };
      sums.set(source, sum);
      sum.strokes++;
      sum.depth += depthOf(nearestStep(offsets, offset), division);
    }
  });
  return [...sums.values()].reduce(
    (cost, { strokes, depth }) => cost + (WEAK_PLACE_COST * depth) / strokes,
    0,
  );
}

/** Everything read this way, every beat in its best division: what that costs in nats. */
function readingCost(
  strokes: readonly PlacedStroke[],
  barCount: number,
  reading: Reading,
  tickSec: Seconds,
): number {
  const beats = heardBeats(strokes, reading, 1, barCount);
  const fits = beats.map((beat) => fitBeat(beat, POOLED_DIVISIONS, reading));
  const grid = fits.reduce((sum, { cost }) => sum + cost, 0);
  const swing = reading.swing.ratio === 1 ? 0 : SWING_COST;
  const latency = ((reading.latency * tickSec) / USUAL_LATENCY_SEC) ** 2 / 2;
  return grid + swing + latency + weakPlaceCost(beats, fits, reading);
}

/** The strokes of so many bars in a row, where most are played, counted from the first of these bars. */
function fullestBars(
  strokes: readonly PlacedStroke[],
  barsHeard: number,
  barCount: number,
  bar: Ticks,
  border: Ticks,
): PlacedStroke[] {
  const inBars = (first: number) =>
    strokes.filter(
      ({ tick }) => tick >= first * bar + border && tick < (first + barCount) * bar - border,
    );
  const firsts = Array.from({ length: barsHeard - barCount + 1 }, (_, first) => first);
  const counts = firsts.map((first) => inBars(first).length);
  const fullest = counts.indexOf(Math.max(...counts));
  return inBars(fullest).map((stroke) => ({ ...stroke, tick: stroke.tick - fullest * bar }));
}

function cheapest<T>(choices: readonly T[], costOf: (choice: T) => number): T {
  const costs = choices.map(costOf);
  return choices[costs.indexOf(Math.min(...costs))]!;
}

/**
 * What is played on one step: how far off it typically lies, how often it was heard, and how many
 * ticks the step moves for a unit of the swing's long share (0 where swing does not move it).
 */
type StepEvidence = { readonly deviation: number; readonly count: number; readonly slope: number };

/** Mean of the deviations within two spreads of their middle, so that slips do not count; undefined for none. */
function typical(deviations: readonly number[], spread: Ticks): number | undefined {
  const middle = median(deviations);
  if (middle === undefined) return undefined;
  const near = deviations.filter((d) => Math.abs(d - middle) <= 2 * spread);
  return near.reduce((sum, d) => sum + d, 0) / near.length;
}

/** Every step's evidence, every beat in its best division. */
function stepEvidence(
  strokes: readonly PlacedStroke[],
  barCount: number,
  reading: Reading,
): StepEvidence[] {
  const reach = reachOf(reading.spread);
  return heardBeats(strokes, reading, 1, barCount).flatMap((beat) => {
    const { division } = fitBeat(beat, POOLED_DIVISIONS, reading);
    const offsets = soundingOffsets(beat, division, reading);
    const { level } = reading.swing;
    const straight = soundingOffsets(beat, division, { ...reading, swing: { level, ratio: 1 } });
    const dotted = soundingOffsets(beat, division, { ...reading, swing: { level, ratio: 3 } });
    return offsets.flatMap((offset, step) => {
      const deviations = beat.strokes
        .filter((stroke) => nearestStep(offsets, stroke.offset) === step)
        .map((stroke) => stroke.offset - offset)
        .filter((deviation) => Math.abs(deviation) <= reach);
      const deviation = typical(deviations, reading.spread);
      if (deviation === undefined) return [];
      // Places are linear in the long share, which a ratio of 3 moves from 0.5 to 0.75.
      const slope = (dotted[step]! - straight[step]!) / 0.25;
      return [{ deviation, count: deviations.length, slope }];
    });
  });
}

type Correction = { readonly latency: number; readonly share: LongShare };

/**
 * Least squares of deviation = latency + slope × share over the steps, weighed by their strokes. The
 * share is held near what was tried, so that it stays where no step tells of it.
 */
function correctionOf(steps: readonly StepEvidence[], spread: Ticks, swings: boolean): Correction {
  const sum = (value: (step: StepEvidence) => number) =>
    steps.reduce((total, step) => total + step.count * value(step), 0);
  const n = sum(() => 1);
  if (n === 0) return { latency: 0, share: 0 };
  const d = sum((step) => step.deviation);
  if (!swings) return { latency: d / n, share: 0 };
  const s = sum((step) => step.slope);
  const ss = sum((step) => step.slope ** 2) + (spread / SHARE_HOLD) ** 2;
  const sd = sum((step) => step.slope * step.deviation);
  const determinant = n * ss - s * s;
  return { latency: (d * ss - s * sd) / determinant, share: (n * sd - s * d) / determinant };
}

function corrected(strokes: readonly PlacedStroke[], barCount: number, reading: Reading): Reading {
  const { level, ratio } = reading.swing;
  const steps = stepEvidence(strokes, barCount, reading);
  const { latency, share } = correctionOf(steps, reading.spread, ratio !== 1);
  const moved = ratio / (1 + ratio) + share;
  const swing = ratio === 1 || moved < LEAST_SHARE ? STRAIGHT : swingOf(level, moved);
  return { ...reading, swing, latency: reading.latency + latency };
}

/**
 * The latency that all strokes have in common and the swing they are played with, all bars laid over
 * each other. Both are tried on a raster, each time with every beat in its best division; the best
 * straight and the best swung reading are then fitted by least squares, and the one that explains the
 * strokes at less cost is taken. Pairs of unequal eighths whose middle triplet nobody plays come out
 * as swing, with it as triplets. `tickSec`: how long a tick lasts.
 */
export function readStrokes(
  placed: readonly PlacedStroke[],
  barsHeard: number,
  meter: Meter,
  spread: Ticks,
  tickSec: Seconds,
): Reading {
  const barCount = Math.min(MOST_BARS, barsHeard);
  const border = borderTicks(tickSec);
  const strokes = fullestBars(placed, barsHeard, barCount, barTicks(meter), border);
  const latencies = latenciesTried(tickSec);
  const costOf = (reading: Reading) => readingCost(strokes, barCount, reading, tickSec);
  const fitted = (reading: Reading) =>
    corrected(strokes, barCount, corrected(strokes, barCount, reading));
  const straight = cheapest(
    latencies.map((latency) => ({ meter, spread, latency, swing: STRAIGHT })),
    costOf,
  );
  const coarse = cheapest(
    swingsOf(meter, COARSE_SHARES).flatMap((swing) =>
      latencies.map((latency) => ({ ...straight, latency, swing })),
    ),
    costOf,
  );
  const swung = cheapest(
    swingsOf(meter, SHARES).map((swing) => ({ ...coarse, swing })),
    costOf,
  );
  return cheapest([fitted(straight), fitted(swung)], costOf);
}
