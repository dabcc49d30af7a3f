import type { Seconds } from '../time/ticks.ts';
import { PERIODS, type Period } from './foldPeriod.ts';

/** How long a bar lasts, and after how many of them what is tapped comes again. */
export type RoundLength = { readonly barSec: Seconds; readonly period: Period };

/** Bar lengths that are tried, as times the expected one, each so much longer than the one before. */
const TRIED = { from: 0.6, to: 1.7, step: 1.005 } as const;

/** How far from the expected tempo people usually tap: a standard deviation of its logarithm. */
const USUAL_DEVIATION = 0.25;

/** How near to a place a tap must lie to lie on it, as a standard deviation. */
const NEAR_SEC: Seconds = 0.05;

/** Gaps between taps that differ by less than this are of one kind, whose mean lies so near to its step. */
const SAME_GAP_SEC: Seconds = 0.03;
const NEAR_GAP_SEC: Seconds = 0.025;

/** What it is worth, in nats, that all taps come again, and that all lie on steps of the beat. */
const WORTH = { returning: 4, onGrid: 3 } as const;

/** What it costs, in nats, that the taps come again only after two or four bars. */
const LONGER_COST: Readonly<Record<Period, number>> = { 1: 0, 2: 0.3, 4: 0.6 };

/** Steps of a beat on which people tap, and how much each is believed beside halves. */
const GRIDS = [
  { steps: 2, belief: 1 },
  { steps: 4, belief: 0.9 },
  { steps: 3, belief: 0.85 },
] as const;

/** Gaps between taps that are looked at, in beats at the most; over longer ones a drift tells. */
const LONGEST_GAP = 2.2;

/**
 * How long the bars of something tapped without a click are, in seconds: the length, near the
 * expected one, after which the taps come again best and whose beats have the gaps between taps on
 * their steps. `taps` ascend. Undefined where they do not last a round and a half of one bar.
 */
export function likeliestRound(
  taps: readonly Seconds[],
  expectedBarSec: Seconds,
  beatsInBar: number,
): RoundLength | undefined {
  const span = taps.at(-1)! - taps[0]!;
  const gaps = gapKinds(taps);
  let best: (RoundLength & { readonly worth: number }) | undefined;
  for (let times = TRIED.from; times <= TRIED.to; times *= TRIED.step) {
    const barSec = expectedBarSec * times;
    const ofTempo =
      WORTH.onGrid * onGrid(gaps, barSec / beatsInBar) -
      (Math.log(times) / USUAL_DEVIATION) ** 2 / 2;
    for (const period of PERIODS) {
      if (span < 1.5 * barSec * period) continue;
      const worth =
        ofTempo + WORTH.returning * returning(taps, barSec * period) - LONGER_COST[period];
      if (!best || worth > best.worth) best = { barSec, period, worth };
    }
  }
  return best && { barSec: best.barSec, period: best.period };
}

/** How well something lies on a place that it is so far off, 0 to 1. */
function nearness(offSec: Seconds, nearSec: Seconds): number {
  return Math.exp(-((offSec / nearSec) ** 2) / 2);
}

/** Which share of the taps comes again after a time, or came before it, 0 to 1. */
function returning(taps: readonly Seconds[], afterSec: Seconds): number {
  const from = taps.filter((tap) => tap + afterSec <= taps.at(-1)! + NEAR_SEC);
  const to = taps.filter((tap) => tap - afterSec >= taps[0]! - NEAR_SEC);
  const again = from.reduce((sum, tap) => {
    const offSec = Math.min(...to.map((other) => Math.abs(other - tap - afterSec)));
    return sum + nearness(offSec, NEAR_SEC);
  }, 0);
  return (2 * again) / Math.max(1, from.length + to.length);
}

/** Gaps that are about the same, as how many there are and their mean. */
type GapKind = { readonly count: number; readonly meanSec: Seconds };

/** The gaps from tap to tap, those that are about the same taken together. */
function gapKinds(taps: readonly Seconds[]): GapKind[] {
  const gaps = taps
    .slice(1)
    .map((tap, i) => tap - taps[i]!)
    .toSorted((a, b) => a - b);
  const kinds: Seconds[][] = [];
  for (const gap of gaps) {
    const kind = kinds.at(-1);
    if (kind && gap - kind.at(-1)! <= SAME_GAP_SEC) kind.push(gap);
    else kinds.push([gap]);
  }
  return kinds.map((kind) => ({
    count: kind.length,
    meanSec: kind.reduce((sum, gap) => sum + gap, 0) / kind.length,
  }));
}

/** How well gaps fit the steps of a beat, 0 to 1. */
function onGrid(kinds: readonly GapKind[], beatSec: Seconds): number {
  const inReach = kinds.filter(({ meanSec }) => meanSec < LONGEST_GAP * beatSec);
  const count = inReach.reduce((sum, kind) => sum + kind.count, 0);
  const fit = inReach.reduce((sum, { count: times, meanSec }) => {
    const fits = GRIDS.map(({ steps, belief }) => {
      const stepSec = beatSec / steps;
      return belief * nearness(meanSec - Math.round(meanSec / stepSec) * stepSec, NEAR_GAP_SEC);
    });
    return sum + times * Math.max(...fits);
  }, 0);
  return fit / Math.max(1, count);
}
