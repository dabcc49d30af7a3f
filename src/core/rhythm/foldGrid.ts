import { barTicks, beatLengths, beatStarts, type Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { median } from './foldNoise.ts';
import type { PlacedStroke } from './foldPlacing.ts';
import { groupBy } from './groupBy.ts';
import type { Division } from './pattern.ts';
import { type Swing, swungTick, takesSwing } from './swing.ts';

/** Divisions that are tried: those of a pattern, and 12, which holds sixteenths and triplets at once. */
export type TriedDivision = Division | 12;

/**
 * What a division costs, in the unit of a log likelihood (nats): the simpler the reading, the less,
 * as in Bayesian quantisation (Cemgil, Desain & Kappen 2000). Worth as much as a step that lies about
 * two standard deviations off; set by trial on patterns with known grids.
 */
const DIVISION_COST: Readonly<Record<TriedDivision, number>> = {
  1: 0,
  2: 1.5,
  3: 3,
  4: 3,
  6: 6,
  8: 6,
  12: 9,
};

/** A tuplet whose middle steps nobody plays is rather swung pairs. */
const SWING_LIKE_COST = 4;

/** Swung eighths are hardly ever divided again; what looks like it is triplets. */
const DIVIDED_SWING_COST = 3;

/** A stroke that the grid does not explain, whatever it is: it lies three spreads off or comes too rarely. */
const UNEXPLAINED_COST = 3;

/**
 * Strokes this much before a beat belong to it rather than to the last step of the beat before: half a
 * thirty-second, or what uneven playing needs, but no more than half a sixteenth.
 */
function earlyTicks(spread: Ticks): Ticks {
  return Math.min(60, Math.max(30, 2.5 * spread));
}

/** No stroke further than this (or three spreads, if that is more) from a step is played on it. */
const REACH_TICKS: Ticks = 40;

/** Players place a step systematically early or late by half their spread, but by this at least. */
const LEAST_HABIT: Ticks = 10;

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

/** One beat of the folded bars with what is played in it; `repeats` is how often the beat comes. */
export type HeardBeat = {
  readonly start: Ticks;
  readonly length: Ticks;
  readonly repeats: number;
  readonly strokes: readonly HeardInBeat[];
};

/** `offset` in ticks from the beat, `repeat` which time the beat comes, `source` as a number. */
type HeardInBeat = { readonly offset: number; readonly repeat: number; readonly source: string };

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
  for (const { tick, source } of strokes) {
    const at = tick - latency + early;
    const repeat = Math.floor(at / period);
    const inPeriod = at - repeat * period;
    const beat = beats.findLast((b) => b.start <= inPeriod);
    if (beat && repeat >= 0 && repeat < beat.repeats)
      beat.strokes.push({ offset: inPeriod - early - beat.start, repeat, source });
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

type Cell = { readonly step: number; readonly deviations: number[]; readonly repeats: Set<number> };

/** Index of the step that sounds nearest to a place in the beat. */
export function nearestStep(offsets: readonly number[], offset: number): number {
  let best = 0;
  offsets.forEach((at, step) => {
    if (Math.abs(offset - at) < Math.abs(offset - offsets[best]!)) best = step;
  });
  return best;
}

/** What each source plays on each step, strokes out of reach left out. */
function cellsOf(beat: HeardBeat, offsets: readonly number[], reach: Ticks): Cell[] {
  const onStep = beat.strokes
    .map((stroke) => ({ ...stroke, step: nearestStep(offsets, stroke.offset) }))
    .filter(({ offset, step }) => Math.abs(offset - offsets[step]!) <= reach);
  const cells = groupBy(onStep, ({ source, step }) => `${step} ${source}`);
  return [...cells.values()].map((strokes) => ({
    step: strokes[0]!.step,
    deviations: strokes.map(({ offset, step }) => offset - offsets[step]!),
    repeats: new Set(strokes.map((stroke) => stroke.repeat)),
  }));
}

/** A step that is played more rarely tells nothing of the grid: in a fifth of the bars, and not once of three. */
function fewestPlayed(of: number): number {
  return Math.max(of > 2 ? 2 : 1, of / 5);
}

/** Nats to tell, repeat by repeat, in which of so many something is played: its entropy. */
function presenceCost(played: number, repeats: number): number {
  const share = played / repeats;
  if (share === 0 || share === 1) return 0;
  return -repeats * (share * Math.log(share) + (1 - share) * Math.log(1 - share));
}

/**
 * How badly a cell fits, as minus a log likelihood in nats: when it is played, how its strokes
 * scatter around their own mean, and how far that mean lies off the step. That last is a habit: one
 * thing however often it is heard, so many late backbeats do not buy a finer grid. At most what the
 * strokes cost without explanation, so that what comes rarely buys none either.
 */
function cellCost({ deviations, repeats }: Cell, of: number, spread: Ticks): number {
  const count = deviations.length;
  if (repeats.size < fewestPlayed(of)) return UNEXPLAINED_COST * count;
  const mean = median(deviations) ?? 0;
  const scatter = deviations.reduce(
    (sum, d) => sum + Math.min(UNEXPLAINED_COST, (d - mean) ** 2 / (2 * spread ** 2)),
    0,
  );
  const habit = Math.max(LEAST_HABIT, spread / 2);
  const offStep = mean ** 2 / (2 * (habit ** 2 + spread ** 2 / count));
  return Math.min(UNEXPLAINED_COST * count, presenceCost(repeats.size, of) + scatter + offStep);
}

/**
 * Whether a triple division could as well be swung pairs: of three, the second is hardly ever played;
 * of six, neither the second nor the third and fifth together (the middle one and last of three).
 */
function couldBeSwing(division: TriedDivision, cells: readonly Cell[], repeats: number): boolean {
  const isPlayed = (step: number) =>
    cells.some((cell) => cell.step === step && cell.repeats.size * 5 >= repeats);
  if (division === 3) return !isPlayed(1);
  return division === 6 && !isPlayed(1) && !(isPlayed(2) && isPlayed(4));
}

/** A division of a beat and what it costs in nats. */
export type BeatFit = { readonly division: TriedDivision; readonly cost: number };

function fitOf(beat: HeardBeat, division: TriedDivision, reading: Reading): BeatFit {
  const offsets = soundingOffsets(beat, division, reading);
  const cells = cellsOf(beat, offsets, reachOf(reading.spread));
  const inReach = cells.reduce((sum, cell) => sum + cell.deviations.length, 0);
  const isDividedSwing =
    division >= 4 &&
    takesSwing(beat.length, division) &&
    reading.swing.ratio !== 1 &&
    reading.swing.level === 'eighth';
  const isTuplet = !takesSwing(beat.length, division);
  const cost =
    cells.reduce((sum, cell) => sum + cellCost(cell, beat.repeats, reading.spread), 0) +
    UNEXPLAINED_COST * (beat.strokes.length - inReach) +
    DIVISION_COST[division] +
    (isDividedSwing ? DIVIDED_SWING_COST : 0) +
    (isTuplet && couldBeSwing(division, cells, beat.repeats) ? SWING_LIKE_COST : 0);
  return { division, cost };
}

/**
 * The division of a beat that explains its strokes at the least cost: least error, with a penalty on
 * complexity.
 */
export function fitBeat<D extends TriedDivision>(
  beat: HeardBeat,
  divisions: readonly D[],
  reading: Reading,
): BeatFit & { readonly division: D } {
  const fits = divisions.map((division) => ({ ...fitOf(beat, division, reading), division }));
  return fits.reduce((best, fit) => (fit.cost < best.cost ? fit : best));
}
