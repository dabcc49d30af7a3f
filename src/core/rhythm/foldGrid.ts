import type { Ticks } from '../time/ticks.ts';
import {
  type HeardBeat,
  nearestStep,
  type Reading,
  reachOf,
  soundingOffsets,
  type TriedDivision,
} from './foldBeats.ts';
import { median } from './foldNoise.ts';
import { takesSwing } from './swing.ts';

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

/** Players place a step systematically early or late by half their spread, but by this at least. */
const LEAST_HABIT: Ticks = 10;

/** What one source plays on one step: how late each stroke is, and in how many repeats of the beat. */
type Cell = {
  readonly step: number;
  readonly deviations: readonly number[];
  readonly played: number;
};

/** What each source plays on each step, strokes out of reach left out. */
function cellsOf(beat: HeardBeat, offsets: readonly number[], reach: Ticks): Cell[] {
  const cells = new Map<
    number,
    { step: number; deviations: number[]; played: number; last: number }
  >();
  for (const { offset, repeat, source } of beat.strokes) {
    const step = nearestStep(offsets, offset);
    const deviation = offset - offsets[step]!;
    if (Math.abs(deviation) > reach) continue;
    const key = source * offsets.length + step;
    const cell = cells.get(key) ?? { step, deviations: [], played: 0, last: -1 };
    cells.set(key, cell);
    cell.deviations.push(deviation);
    if (repeat !== cell.last) cell.played++;
    cell.last = repeat;
  }
  return [...cells.values()];
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
 * scatter around their middle, and how far that lies off the step. That last is a habit: one
 * thing however often it is heard, so many late backbeats do not buy a finer grid. At most what the
 * strokes cost without explanation, so that what comes rarely buys none either.
 */
function cellCost({ deviations, played }: Cell, of: number, spread: Ticks): number {
  const count = deviations.length;
  if (played < fewestPlayed(of)) return UNEXPLAINED_COST * count;
  const middle = median(deviations) ?? 0;
  const scatter = deviations.reduce(
    (sum, d) => sum + Math.min(UNEXPLAINED_COST, (d - middle) ** 2 / (2 * spread ** 2)),
    0,
  );
  const habit = Math.max(LEAST_HABIT, spread / 2);
  const offStep = middle ** 2 / (2 * (habit ** 2 + spread ** 2 / count));
  return Math.min(UNEXPLAINED_COST * count, presenceCost(played, of) + scatter + offStep);
}

/**
 * Whether a triple division could as well be swung pairs: of three, the second is hardly ever played;
 * of six, neither the second nor the third and fifth together (the middle one and last of three).
 */
function couldBeSwing(division: TriedDivision, cells: readonly Cell[], repeats: number): boolean {
  const isPlayed = (step: number) =>
    cells.some((cell) => cell.step === step && cell.played * 5 >= repeats);
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
