/**
 * What one source does on one step of the bar, bar by bar: played or not. Bars are counted from the
 * first that is heard.
 */
export type StepHistory = readonly boolean[];

/** Periods in bars that a pattern can have. */
export const PERIODS = [1, 2, 4] as const;

export type Period = (typeof PERIODS)[number];

/**
 * Shares of bars in which a step can be played, from never to always: closer together towards the ends,
 * evenly by the arcsine, in which a share is equally well known everywhere.
 */
const SHARES: readonly number[] = Array.from(
  { length: 48 },
  (_, i) => Math.sin((Math.PI * (i + 0.5)) / 96) ** 2,
);

/**
 * Steps that are taken as seen before any are, for each of `SHARES`, a dozen in all: in a groove most
 * steps are played nearly always or nearly never, and it takes many to believe in steps that come
 * every other time.
 */
const EXPECTED: readonly number[] = scaledTo(
  12,
  SHARES.map((share) => 1 / (0.03 + share * (1 - share))),
);

/** How many of the steps may differ between the bars of a longer period; the best is taken. */
const DIFFERING = [0.02, 0.05, 0.1, 0.2, 0.5] as const;

/**
 * How much better than any shorter one a period must explain the bars, in nats. Two bars: odds of
 * about 20 to 1. Four bars ask more of the player, and a crash at the start of every phrase alone
 * shall not make them.
 */
const LONGER_COST: Readonly<Record<Period, number>> = { 1: 0, 2: 3, 4: 9 };

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

function scaledTo(total: number, numbers: readonly number[]): number[] {
  const sum = numbers.reduce((all, n) => all + n, 0);
  return numbers.map((n) => (n * total) / sum);
}

function logLikelihood({ played, of }: Count, share: number): number {
  return played * Math.log(share) + (of - played) * Math.log(1 - share);
}

/** Logarithm of a sum of numbers given by their logarithms, without underflow. */
function logSum(logs: readonly number[]): number {
  const highest = Math.max(...logs);
  return highest + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - highest), 0));
}

/** How common each of the `SHARES` is among these counts, as logarithms: a mixture fitted by expectation and maximisation. */
function commonness(counts: readonly Count[]): number[] {
  const known = counts.map((count) => SHARES.map((share) => logLikelihood(count, share)));
  let weights = scaledTo(1, EXPECTED);
  for (let round = 0; round < ROUNDS; round++) {
    const sums = [...EXPECTED];
    for (const logs of known) {
      const terms = logs.map((log, j) => log + Math.log(weights[j]!));
      const total = logSum(terms);
      terms.forEach((term, j) => (sums[j]! += Math.exp(term - total)));
    }
    weights = scaledTo(1, sums);
  }
  return weights.map(Math.log);
}

/** Log likelihood of a count when its share is any of `SHARES`, as common as the weights say. */
function evidence(count: Count, logWeights: readonly number[]): number {
  return logSum(SHARES.map((share, j) => logWeights[j]! + logLikelihood(count, share)));
}

/** Log likelihood of the histories when some of the steps do something else in each bar of the period. */
function periodFit(
  histories: readonly StepHistory[],
  period: Period,
  logWeights: readonly number[],
): number {
  const longer = PERIODS.filter((p) => p > 1 && p <= period);
  const ways = histories.map((history) => ({
    same: evidence(countOf(history, 0, 1), logWeights),
    differing: longer.map((p) =>
      countsOf(history, p).reduce((sum, count) => sum + evidence(count, logWeights), 0),
    ),
  }));
  if (period === 1) return ways.reduce((sum, { same }) => sum + same, 0);
  const fits = DIFFERING.map((share) =>
    ways.reduce((sum, { same, differing }) => {
      const other = logSum(differing) - Math.log(differing.length);
      return sum + logSum([Math.log(1 - share) + same, Math.log(share) + other]);
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
