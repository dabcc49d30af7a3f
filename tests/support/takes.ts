import type { ExpectedHit, HitHand } from '../../src/core/practice/expectedHits.ts';
import { matchHits } from '../../src/core/practice/matchHits.ts';
import type { PlayedHit } from '../../src/core/practice/playedHits.ts';
import { scoreTake, type TakeContext, type TakeScore } from '../../src/core/practice/takeScore.ts';
import type { HandName } from '../../src/core/voicing/voicing.ts';

/** An expected hit half a second from its neighbours, with what `parts` says instead. */
export function expectedHit(
  atSec: number,
  hand: HitHand = 'left',
  parts: Partial<ExpectedHit> = {},
): ExpectedHit {
  return { atSec, hand, keys: [], gapSec: 0.5, ...parts };
}

/** A hit that was played; the hand is not told if it is left out. */
export function playedHit(atSec: number, hand?: HandName, keys: readonly number[] = []): PlayedHit {
  return { atSec, keys, ...(hand && { hand }) };
}

/** An expected hit and how many milliseconds later it is played (earlier is negative), or that it is missed. */
export type Attempt = readonly [expected: ExpectedHit, laterMs: number | 'missed'];

/** The score of what was attempted, in time order, and of extra hits. */
export function scoreOf(
  attempts: readonly Attempt[],
  extra: readonly PlayedHit[] = [],
  context: TakeContext = {},
): TakeScore {
  const answers = attempts.flatMap(([{ atSec, hand, keys }, laterMs]) =>
    laterMs === 'missed'
      ? []
      : [playedHit(atSec + laterMs / 1000, hand === 'both' ? undefined : hand, keys)],
  );
  const played = [...answers, ...extra].toSorted((a, b) => a.atSec - b.atSec);
  return scoreTake(
    matchHits(
      attempts.map(([expected]) => expected),
      played,
      0.15,
    ),
    context,
  );
}
