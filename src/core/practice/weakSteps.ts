import type { StepScore } from './stepScores.ts';
import type { TakeScore } from './takeScore.ts';
import { toleranceBands } from './tolerance.ts';

/**
 * A step that goes wrong: `missed` of its `expected` hits were not played, and those that were came
 * `laterMs` later (earlier is negative) than the hand's others on average. `weakness` is above 0:
 * the share that was missed plus how far the step lies off, counted in widths of the band “fair”,
 * plus wrong keys to a hit.
 */
export type WeakStep = Pick<StepScore, 'hand' | 'patternId' | 'patternTick' | 'expected'> & {
  readonly missed: number;
  readonly laterMs?: number;
  readonly weakness: number;
};

/** Weaker than this counts as weak: a quarter missed, or a fourth of “fair” beside the hand. Our own choice. */
const WEAK = 0.25;

/** A step's lateness must be twice its standard error, or it may be chance. */
const CLEAR = 2;

/** The steps of a take that go wrong, weakest first. */
export function weakSteps(score: TakeScore): WeakStep[] {
  return score.steps
    .map((step) => weakStep(step, score))
    .filter((step) => step.weakness >= WEAK)
    .toSorted((a, b) => b.weakness - a.weakness || a.patternTick - b.patternTick);
}

function weakStep(step: StepScore, score: TakeScore): WeakStep {
  const { hand, patternId, patternTick, expected } = step;
  const missed = expected - step.hits;
  const laterMs = clearLateness(step, score);
  const fairMs = 1000 * toleranceBands(score.gapSec ?? 1).fair;
  return {
    hand,
    ...(patternId === undefined ? {} : { patternId }),
    patternTick,
    expected,
    missed,
    ...(laterMs === undefined ? {} : { laterMs }),
    weakness: missed / expected + Math.abs(laterMs ?? 0) / fairMs + step.wrongKeys / expected,
  };
}

/** How much later than its hand a step comes, if that is no chance. */
function clearLateness(step: StepScore, score: TakeScore): number | undefined {
  const hand = score.hands.find((each) => each.hand === step.hand);
  if (step.meanMs === undefined || step.spreadMs === undefined || hand?.meanMs === undefined)
    return undefined;
  const laterMs = step.meanMs - hand.meanMs;
  // Of a step that was played twice or three times the spread says little; the hand's says more.
  const spreadMs = Math.max(step.spreadMs, hand.unevennessMs ?? 0);
  const errorMs = spreadMs / Math.sqrt(step.hits);
  return Math.abs(laterMs) > CLEAR * errorMs ? laterMs : undefined;
}
