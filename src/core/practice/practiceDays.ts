import { groupBy } from '../rhythm/groupBy.ts';
import type { Bpm } from '../time/tempoMap.ts';
import type { HitHand } from './expectedHits.ts';
import { type PracticeTarget, sameTarget, type TakeRecord } from './takeRecord.ts';

/** Something about each hand, as far as there is something to say. */
export type ByHand = Readonly<Partial<Record<HitHand, number>>>;

export const HIT_HANDS = ['left', 'right', 'both'] as const satisfies readonly HitHand[];

/**
 * A day on which something was practised, as an ISO 8601 date. `cleanBpm`: the fastest tempo that was
 * played clean and through with a hand (or both), the whole part. `unevennessMs`: the median over the
 * day's takes of what each hand was uneven by (`both`: heard as one).
 */
export type PracticeDay = {
  readonly day: string;
  readonly takes: number;
  readonly cleanBpm: Readonly<Partial<Record<HitHand, Bpm>>>;
  readonly unevennessMs: ByHand;
};

/** The days of some takes, in order; `dayOf` tells the date of a moment (milliseconds since 1970) where the player is. */
export function practiceDays(
  takes: readonly TakeRecord[],
  dayOf: (atMs: number) => string,
): PracticeDay[] {
  const byDay = groupBy(takes, ({ atMs }) => dayOf(atMs));
  return [...byDay.entries()]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([day, ofDay]) => ({
      day,
      takes: ofDay.length,
      cleanBpm: byHand((hand) => cleanTempos(ofDay, hand), highest),
      unevennessMs: byHand((hand) => unevennesses(ofDay, hand), median),
    }));
}

function byHand(
  valuesOf: (hand: HitHand) => readonly number[],
  one: (values: readonly number[]) => number,
): ByHand {
  return Object.fromEntries(
    HIT_HANDS.flatMap((hand) => {
      const values = valuesOf(hand);
      return values.length === 0 ? [] : [[hand, one(values)]];
    }),
  );
}

function cleanTempos(takes: readonly TakeRecord[], hand: HitHand): Bpm[] {
  return takes
    .filter((take) => take.hand === hand && take.score.clean)
    .filter((take) => take.passes > 0 && take.level === undefined)
    .map(({ bpm }) => bpm);
}

function unevennesses(takes: readonly TakeRecord[], hand: HitHand): number[] {
  return takes.flatMap(({ score }) =>
    score.hands.flatMap((each) =>
      each.hand === hand && each.unevennessMs !== undefined ? [each.unevennessMs] : [],
    ),
  );
}

function highest(values: readonly number[]): number {
  return Math.max(...values);
}

/** The middle value, or the mean of the two in the middle; there must be one. */
function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** What was practised in some takes, what was last played first. */
export function targetsOf(takes: readonly TakeRecord[]): PracticeTarget[] {
  const targets: PracticeTarget[] = [];
  for (const { target } of takes.toSorted((a, b) => b.atMs - a.atMs))
    if (!targets.some((known) => sameTarget(known, target))) targets.push(target);
  return targets;
}
