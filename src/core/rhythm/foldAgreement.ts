import type { SteppedStroke } from './foldSteps.ts';
import { groupBy } from './groupBy.ts';
import { PLAYED_PRESENCE } from './sources.ts';

/** A bar agrees with the pattern when its agreement is at least this. */
export const AGREEING = 0.7;

/** How often the bars are compared with what the agreeing ones have in common. */
const ROUNDS = 3;

type Cell = { readonly presence: number; readonly strength: number };

function cellKey({ stroke, step }: SteppedStroke): string {
  return `${step} ${stroke.source}`;
}

function bars(count: number): number[] {
  return Array.from({ length: count }, (_, bar) => bar);
}

/**
 * The bars heard that count for each bar of the period: those that agree, or all of them where
 * fewer than half do (then there is no saying which bars are the odd ones).
 */
export function countedBars(agreement: readonly number[], period: number): number[] {
  const all = bars(agreement.length);
  const agreeing = all.filter((bar) => agreement[bar]! >= AGREEING);
  const everyBarHasOne = bars(Math.min(period, all.length)).every((inPeriod) =>
    agreeing.some((bar) => bar % period === inPeriod),
  );
  return agreeing.length * 2 >= all.length && everyBarHasOne ? agreeing : all;
}

/** How often each bar of the period is heard among these bars. */
export function timesHeard(heard: readonly number[], period: number): number[] {
  return bars(period).map((inPeriod) => heard.filter((bar) => bar % period === inPeriod).length);
}

/** What the counted bars have in common: every step of a source that half of them play. */
function commonCells(
  strokes: readonly SteppedStroke[],
  counted: readonly number[],
  period: number,
): Map<string, Cell & { readonly inPeriod: number }> {
  const isCounted = new Set(counted);
  const times = timesHeard(counted, period);
  const cells = groupBy(
    strokes.filter((s) => isCounted.has(s.bar)),
    cellKey,
  );
  return new Map(
    [...cells].flatMap(([key, own]) => {
      const inPeriod = own[0]!.bar % period;
      const presence = own.length / times[inPeriod]!;
      const strength = own.reduce((sum, s) => sum + s.stroke.strength, 0) / own.length;
      return presence >= PLAYED_PRESENCE ? [[key, { presence, strength, inPeriod }] as const] : [];
    }),
  );
}

/**
 * How far each bar agrees with what the counted bars have in common, 0 to 1: twice the weight of the
 * strokes that both have over the weight of the strokes of each (an F-measure), every stroke weighing
 * what it is strong, so that a missed backbeat tells more than a missed ghost note.
 */
function agreementOf(
  strokes: readonly SteppedStroke[],
  common: ReturnType<typeof commonCells>,
  period: number,
  barCount: number,
): number[] {
  const byBar = groupBy(strokes, (s) => s.bar);
  return bars(barCount).map((bar) => {
    const own = byBar.get(bar) ?? [];
    const meant = [...common.values()].filter((cell) => cell.inPeriod === bar % period);
    const shared = own.reduce((sum, s) => {
      const cell = common.get(cellKey(s));
      return cell ? sum + s.stroke.strength + cell.strength : sum;
    }, 0);
    const all =
      own.reduce((sum, s) => sum + s.stroke.strength, 0) +
      meant.reduce((sum, cell) => sum + cell.strength, 0);
    return all === 0 ? 1 : shared / all;
  });
}

/**
 * How far each bar heard agrees with the pattern, 0 to 1. The pattern is what half of the bars play;
 * then what half of the agreeing bars play, and so on, so that fills and odd bars drop out.
 */
export function barAgreement(
  strokes: readonly SteppedStroke[],
  period: number,
  barCount: number,
): number[] {
  let counted = bars(barCount);
  let agreement: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const common = commonCells(strokes, counted, period);
    agreement = agreementOf(strokes, common, period, barCount);
    counted = countedBars(agreement, period);
  }
  return agreement;
}
