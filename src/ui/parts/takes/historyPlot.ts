import type { HitHand } from '../../../core/practice/expectedHits.ts';
import { type ByHand, HIT_HANDS } from '../../../core/practice/practiceDays.ts';
import type { Pixels } from '../grid/systemLayout.ts';

/** A plot's size and the room that is left around its field for labels. */
export type PlotSize = {
  readonly width: Pixels;
  readonly height: Pixels;
  readonly left: Pixels;
  readonly right: Pixels;
  readonly top: Pixels;
  readonly bottom: Pixels;
};

/** What each hand has on a day (an ISO 8601 date). */
export type DayValues = { readonly day: string; readonly values: ByHand };

export type PlotPoint = { readonly day: string; readonly x: Pixels; readonly y: Pixels };

export type PlotTick = { readonly value: number; readonly at: Pixels };

/**
 * A plot over days: the points of each hand that has any, in order of time; where the values of the
 * vertical axis stand, and the days of the horizontal one.
 */
export type HistoryPlot = {
  readonly lines: readonly { readonly hand: HitHand; readonly points: readonly PlotPoint[] }[];
  readonly values: readonly PlotTick[];
  readonly days: readonly { readonly day: string; readonly at: Pixels }[];
  /** Height of the value that is aimed at, if there is one. */
  readonly goalAt?: Pixels;
};

const DAY_MS = 86_400_000;

/** Sizes of steps between round values, before a power of ten. */
const ROUND = [1, 2, 5, 10, 20] as const;

/**
 * Round values (1, 2 or 5 times a power of ten apart) from at or below `low` to at or above `high`,
 * with at most `most` steps between them. `high` must lie above `low`.
 */
export function roundValues(low: number, high: number, most: number): number[] {
  if (!(high > low)) throw new Error(`an axis cannot go from ${low} to ${high}`);
  const power = 10 ** Math.floor(Math.log10((high - low) / most));
  const step = ROUND.map((each) => each * power).find((each) => fits(low, high, each, most))!;
  const first = Math.floor(low / step);
  const last = Math.ceil(high / step);
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
}

function fits(low: number, high: number, step: number, most: number): boolean {
  return Math.ceil(high / step) - Math.floor(low / step) <= most;
}

/** An axis shows at least so many bpm or ms, so that small differences look small. */
const LEAST_SPAN = 8;

function axisValues(inSight: readonly number[]): number[] {
  const [lowest, highest] = [Math.min(...inSight), Math.max(...inSight)];
  const low = Math.max(0, Math.min(lowest, (lowest + highest - LEAST_SPAN) / 2));
  return roundValues(low, Math.max(highest, low + LEAST_SPAN), 4);
}

/** At most so many dates stand under a plot. */
const MOST_DAYS = 3;

/** The first, the last and, where there are several, the day nearest to the middle between them. */
function labelledDays(days: readonly string[], xOf: (day: string) => Pixels): string[] {
  if (days.length <= MOST_DAYS) return [...days];
  const [first, last] = [days[0]!, days.at(-1)!];
  const middle = (xOf(first) + xOf(last)) / 2;
  const inside = days.slice(1, -1);
  const nearest = inside.reduce((best, day) =>
    Math.abs(xOf(day) - middle) < Math.abs(xOf(best) - middle) ? day : best,
  );
  return [first, nearest, last];
}

/** Labels of days need so much room each; where there is less, only the last day is labelled. */
const DAY_LABEL: Pixels = 62;

function roomy(
  labels: readonly { readonly day: string; readonly at: Pixels }[],
): readonly { readonly day: string; readonly at: Pixels }[] {
  const [first, last] = [labels[0], labels.at(-1)];
  if (!first || !last || labels.length === 1) return labels;
  if (last.at - first.at < DAY_LABEL) return [last];
  return labels.filter(
    (each) =>
      each === first ||
      each === last ||
      (each.at - first.at >= DAY_LABEL && last.at - each.at >= DAY_LABEL),
  );
}

/**
 * The plot of what each hand has over days, in a field of a size; from the first day to the last, also
 * where nobody has anything on them, days lie as far apart as they are, a single one in the middle. `goal` is in sight, too, and so is 0 where `fromZero`. Undefined without a value.
 */
export function historyPlot(
  days: readonly DayValues[],
  size: PlotSize,
  { goal, fromZero = false }: { readonly goal?: number; readonly fromZero?: boolean } = {},
): HistoryPlot | undefined {
  const shown = days.filter(({ values }) => Object.keys(values).length > 0);
  if (shown.length === 0) return undefined;
  const all = shown.flatMap(({ values }) => Object.values(values));
  const inSight = [...all, ...(goal === undefined ? [] : [goal]), ...(fromZero ? [0] : [])];
  const values = axisValues(inSight);
  const [low, high] = [values[0]!, values.at(-1)!];
  const dayNumber = (day: string) => Date.parse(day) / DAY_MS;
  const from = dayNumber(days[0]!.day);
  const span = dayNumber(days.at(-1)!.day) - from;
  const inner = size.width - size.left - size.right;
  const xOf = (day: string) =>
    size.left + inner * (span === 0 ? 0.5 : (dayNumber(day) - from) / span);
  const yOf = (value: number) =>
    size.top + ((high - value) / (high - low)) * (size.height - size.top - size.bottom);
  const pointsOf = (hand: HitHand) =>
    shown.flatMap(({ day, values: ofDay }) => {
      const value = ofDay[hand];
      return value === undefined ? [] : [{ day, x: xOf(day), y: yOf(value) }];
    });
  return {
    lines: HIT_HANDS.map((hand) => ({ hand, points: pointsOf(hand) })).filter(
      ({ points }) => points.length > 0,
    ),
    values: values.map((value) => ({ value, at: yOf(value) })),
    days: roomy(
      labelledDays(
        days.map(({ day }) => day),
        xOf,
      ).map((day) => ({ day, at: xOf(day) })),
    ),
    ...(goal !== undefined && { goalAt: yOf(goal) }),
  };
}

/** Half the size of a point's sign. */
const SIGN: Pixels = 5;

/** A point's sign as SVG path data: a triangle up for the right hand, down for the left, a disc for both. */
export function signPath(hand: HitHand, { x, y }: Pick<PlotPoint, 'x' | 'y'>): string {
  switch (hand) {
    case 'right':
      return `M${x} ${y - SIGN}l${SIGN} ${2 * SIGN}h${-2 * SIGN}z`;
    case 'left':
      return `M${x} ${y + SIGN}l${SIGN} ${-2 * SIGN}h${-2 * SIGN}z`;
    default:
      return `M${x - SIGN} ${y}a${SIGN} ${SIGN} 0 1 0 ${2 * SIGN} 0a${SIGN} ${SIGN} 0 1 0 ${-2 * SIGN} 0z`;
  }
}

/** The line through points as SVG path data. */
export function linePath(points: readonly PlotPoint[]): string {
  return points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');
}
