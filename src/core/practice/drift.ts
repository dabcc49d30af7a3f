import { groupBy } from '../rhythm/groupBy.ts';
import type { Seconds } from '../time/ticks.ts';
import { meanOf } from './deviations.ts';

/**
 * How the tempo that was played differs from the one asked for, in per cent: on average
 * (`fasterPercent`, slower is negative), and at the end against the beginning (`gainPercent`).
 */
export type Drift = { readonly fasterPercent: number; readonly gainPercent: number };

/** A hit's deviation at its expected time; hits of one `group` (a hand) share their mean lateness. */
export type DriftPoint = {
  readonly group: string;
  readonly atSec: Seconds;
  readonly deviationSec: Seconds;
};

/**
 * What drift takes part in some deviations. `withoutDrift` are they without it, their means by group
 * as before; `terms` is how many numbers (0, 1 or 2) describe the drift; it is absent with none.
 */
export type DriftFit = {
  readonly withoutDrift: readonly Seconds[];
  readonly terms: number;
  readonly drift?: Drift;
};

/** With fewer hits a drift cannot be told from unevenness. */
const FEWEST_HITS = 8;

/** A slope counts only if it is so many times its standard error: chance makes it so once in some thousand takes. */
const CLEAR = 4;

/** Nobody is more even than this; keeps a mechanical player from counting for everything. */
const LEAST_SPREAD_SEC: Seconds = 0.001;

/**
 * The steady drift in deviations, or a growing one where that fits clearly better: least squares of
 * a line or parabola over time, one for all groups, each around its own mean and weighed by its own
 * evenness. Nothing where neither is clearly there.
 */
export function fitDrift(points: readonly DriftPoint[]): DriftFit {
  const deviations = points.map((point) => point.deviationSec);
  if (points.length < FEWEST_HITS) return { withoutDrift: deviations, terms: 0 };
  const middleSec = meanOf(points.map((point) => point.atSec));
  const away = points.map((point) => point.atSec - middleSec);
  const values = centred(points, deviations);
  const line = centred(points, away);
  const square = centred(
    points,
    away.map((sec) => sec * sec),
  );
  const free = points.length - new Set(points.map((point) => point.group)).size;
  const rest = ({ slope, curve }: Parabola) =>
    values.map((value, i) => value - slope * line[i]! - curve * square[i]!);

  const spreads = spreadOfGroups(points, rest(parabola(values, line, square, free)));
  const evened = (list: readonly number[]) => list.map((value, i) => value / spreads[i]!);
  const fit = parabola(evened(values), evened(line), evened(square), free);
  const drift = driftOf(fit, Math.min(...away), Math.max(...away));
  const left = rest(fit);
  return {
    withoutDrift: deviations.map((deviation, i) => deviation - values[i]! + left[i]!),
    terms: fit.terms,
    ...(fit.terms > 0 && { drift }),
  };
}

/** Growth by the time and by its square; `terms` of the two are clearly there, the others 0. */
type Parabola = { readonly slope: number; readonly curve: number; readonly terms: number };

function parabola(
  values: readonly number[],
  line: readonly number[],
  square: readonly number[],
  free: number,
): Parabola {
  // What a parabola has beyond a line; so each of the two can be fitted and judged by itself.
  const tilt = share(square, line);
  const bow = without(square, line, tilt);
  const [slope, curve] = [share(values, line), share(values, bow)];
  const offLine = without(values, line, slope);
  const offParabola = without(offLine, bow, curve);
  if (isClear(curve, bow, offParabola, free - 2))
    return { slope: slope - curve * tilt, curve, terms: 2 };
  if (isClear(slope, line, offLine, free - 1)) return { slope, curve: 0, terms: 1 };
  return { slope: 0, curve: 0, terms: 0 };
}

/** For every point the spread of its group around the fit. */
function spreadOfGroups(points: readonly DriftPoint[], rest: readonly number[]): number[] {
  const spreads = new Map(
    [...groupBy(points.keys(), (i) => points[i]!.group)].map(([group, places]) => [
      group,
      Math.sqrt(meanOf(places.map((i) => rest[i]! ** 2))),
    ]),
  );
  return points.map(({ group }) => Math.max(spreads.get(group)!, LEAST_SPREAD_SEC));
}

/** The values, each less the mean of its group. */
function centred(points: readonly DriftPoint[], values: readonly number[]): number[] {
  const means = new Map(
    [...groupBy(points.keys(), (i) => points[i]!.group)].map(([group, places]) => [
      group,
      meanOf(places.map((i) => values[i]!)),
    ]),
  );
  return points.map((point, i) => values[i]! - means.get(point.group)!);
}

/** How much of a term is in the values, by least squares; nothing of a term that is 0 everywhere. */
function share(values: readonly number[], term: readonly number[]): number {
  const size = dot(term, term);
  return size > 1e-12 ? dot(values, term) / size : 0;
}

function isClear(
  coefficient: number,
  term: readonly number[],
  rest: readonly number[],
  free: number,
): boolean {
  const size = dot(term, term);
  const error = Math.sqrt(dot(rest, rest) / free / size);
  return free > 0 && size > 1e-12 && Math.abs(coefficient) > CLEAR * error;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}

function without(values: readonly number[], term: readonly number[], times: number): number[] {
  return values.map((value, i) => value - times * term[i]!);
}

/** Where deviation grows by `slope` of the time, the tempo is 1 / (1 + slope) of what was asked for. */
function driftOf({ slope, curve }: Parabola, fromSec: Seconds, toSec: Seconds): Drift {
  const tempoAt = (sec: Seconds) => 1 / (1 + slope + 2 * curve * sec);
  return {
    fasterPercent: 100 * (1 / (1 + slope + curve * (fromSec + toSec)) - 1),
    gainPercent: 100 * (tempoAt(toSec) / tempoAt(fromSec) - 1),
  };
}
