import type { PatternId } from '../ids.ts';
import { groupBy } from '../rhythm/groupBy.ts';
import type { Ticks } from '../time/ticks.ts';
import { type Deviations, deviationsOf } from './deviations.ts';
import type { ExpectedHit, HitHand } from './expectedHits.ts';
import { keyScore } from './keyScore.ts';
import type { HitPair } from './matchHits.ts';

/** The hits of one hand at one step of a pattern, drift taken out; `hits` of the `expected` were played. */
export type StepScore = Deviations & {
  readonly hand: HitHand;
  readonly patternId?: PatternId;
  readonly patternTick: Ticks;
  readonly expected: number;
  readonly wrongKeys: number;
};

/** A `StepScore` for every step of a pattern that something is expected at, by pattern, place and hand. */
export function stepScores(pairs: readonly HitPair[], missed: readonly ExpectedHit[]): StepScore[] {
  const pairsAt = groupBy(pairs, (pair) => stepKey(pair.expected));
  const all = groupBy([...pairs.map((pair) => pair.expected), ...missed], stepKey);
  return [...all.entries()]
    .flatMap(([key, hits]) => stepScore(hits, pairsAt.get(key) ?? []))
    .toSorted(
      (a, b) =>
        compareText(a.patternId ?? '', b.patternId ?? '') ||
        a.patternTick - b.patternTick ||
        compareText(a.hand, b.hand),
    );
}

function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

function stepKey({ hand, patternId, patternTick }: ExpectedHit): string | undefined {
  return patternTick === undefined ? undefined : JSON.stringify([patternId, patternTick, hand]);
}

function stepScore(expected: readonly ExpectedHit[], pairs: readonly HitPair[]): StepScore[] {
  const { hand, patternId, patternTick } = expected[0]!;
  if (patternTick === undefined) return [];
  return [
    {
      ...deviationsOf(pairs.map((pair) => pair.deviationSec)),
      hand,
      ...(patternId === undefined ? {} : { patternId }),
      patternTick,
      expected: expected.length,
      wrongKeys: keyScore(pairs)?.wrongKeys ?? 0,
    },
  ];
}
