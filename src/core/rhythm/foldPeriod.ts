/**
 * What one source does on one step of the bar, bar by bar: played or not. Bars are counted from the
 * first that is heard.
 */
export type StepHistory = readonly boolean[];

/** Periods in bars that a pattern can have. */
export const PERIODS = [1, 2, 4] as const;

export type Period = (typeof PERIODS)[number];

/** Shares of bars in which a step can be played, from never to always. */
const SHARES = [0.01, 0.03, 0.1, 0.3, 0.5, 0.7, 0.85, 0.95, 0.99] as const;

/**
 * Steps that are taken as seen before any are, for each of `SHARES`: in a groove most steps are
 * played nearly always or nearly never, and it takes many to believe in steps that come every other time.
 */
const EXPECTED = [1, 2, 2, 0.3, 0.1, 0.3, 2, 3, 1] as const;

/** How many of the steps may differ between the bars of a longer period; the best is taken. */
const DIFFERING = [0.02, 0.05, 0.1, 0.2, 0.5] as const;

/**
 * How much better than any shorter one a period must explain the bars, in nats. Two bars: odds of
 * about 7 to 1. Four bars ask more of the player, and a crash at the start of every phrase alone
 * shall not make them.
 */
const LONGER_COST: Readonly<Record<Period, number>> = { 1: 0, 2: 2, 4: 8 };

/** A longer period is only looked for where it comes at least so often. */
const FEWEST_RETURNS = 2;

const ROUNDS = 30;

type Count = { readonly played: number; readonly of: number };

function countOf(history: StepHistory, from: number, every: number): Count {
  let played = 0;
  let of = 0;
  for (let bar = from; bar < history.length; bar += every) {
    of++;
    if (history[bar]) played++;
  }
  return { played, of };
}

/** The history taken apart into the bars of a period. */
function countsOf(history: StepHistory, period: Period): Count[] {
  return Array.from({ length: period }, (_, bar) => countOf(history, bar, period));
}

function likelihood({ played, of }: Count, share: number): number {
  return share ** played * (1 - share) ** (of - played);
}

/** How common each of the `SHARES` is among these counts: a mixture fitted by expectation and maximisation. */
function commonness(counts: readonly Count[]): number[] {
  let weights: number[] = SHARES.map(() => 1 / SHARES.length);
  for (let round = 0; round < ROUNDS; round++) {
    const sums: number[] = [...EXPECTED];
    for (const count of counts) {
      const terms = SHARES.map((share, j) => weights[j]! * likelihood(count, share));
      const total = terms.reduce((sum, term) => sum + term, 0);
      terms.forEach((term, j) => (sums[j]! += term / total));
    }
    const all = sums.reduce((total, sum) => total + sum, 0);
    weights = sums.map((sum) => sum / all);
  }
  return weights;
}

/** Likelihood of a count when its share is any of `SHARES`, as common as the weights say. */
function evidence(count: Count, weights: readonly number[]): number {
  return SHARES.reduce((sum, share, j) => sum + weights[j]! * likelihood(count, share), 0);
}

/** Log likelihood of the histories when some of the steps do something else in each bar of the period. */
function periodFit(
  histories: readonly StepHistory[],
  period: Period,
  weights: readonly number[],
): number {
  const ways = histories.map((history) => ({
    same: evidence(countOf(history, 0, 1), weights),
    differing: PERIODS.filter((p) => p > 1 && p <= period).map((p) =>
      countsOf(history, p).reduce((product, count) => product * evidence(count, weights), 1),
    ),
  }));
  if (period === 1) return ways.reduce((sum, { same }) => sum + Math.log(same), 0);
  const fits = DIFFERING.map((share) =>
    ways.reduce((sum, { same, differing }) => {
      const other = differing.reduce((total, d) => total + d, 0) / differing.length;
      return sum + Math.log((1 - share) * same + share * other);
    }, 0),
  );
  return Math.max(...fits) - Math.log(DIFFERING.length);
}

/** How much better than a period of one bar each period explains what is heard, in nats; 0 for one bar. */
export type PeriodEvidence = { readonly bars: Period; readonly gain: number };

/** Evidence for every period that returns at least twice in the bars heard. */
export function periodEvidence(
  histories: readonly StepHistory[],
  barCount: number,
): PeriodEvidence[] {
  const possible = PERIODS.filter((bars) => bars === 1 || bars * FEWEST_RETURNS <= barCount);
  const heard = histories.filter((history) => history.some(Boolean));
  const longest = possible.at(-1) ?? 1;
  const weights = commonness(heard.flatMap((history) => countsOf(history, longest)));
  const base = periodFit(heard, 1, weights);
  return possible.map((bars) => ({
    bars,
    gain: heard.length === 0 ? 0 : periodFit(heard, bars, weights) - base,
  }));
}

/**
 * The shortest period that explains the bars: a longer one has to explain them better than any shorter
 * by its `LONGER_COST`. Each step is either played alike in all bars or differs between the bars of the
 * period; how reliable the players are is learned from all steps together (empirical Bayes), so that in
 * a loose groove chance alternations do not look like a pattern.
 */
export function shortestPeriod(evidences: readonly PeriodEvidence[]): Period {
  return evidences.reduce((best, longer) =>
    longer.gain > best.gain + LONGER_COST[longer.bars] ? longer : best,
  ).bars;
}
