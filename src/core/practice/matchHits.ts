import type { Seconds } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';
import type { ExpectedHit } from './expectedHits.ts';
import { pairTimes, type TimePair } from './pairTimes.ts';
import type { PlayedHit } from './playedHits.ts';

/** An expected hit with the played one that answers it; `deviationSec` is played − expected, early is negative. */
export type HitPair = {
  readonly expected: ExpectedHit;
  readonly played: PlayedHit;
  readonly deviationSec: Seconds;
};

/** Every expected hit is paired or missed, every played one paired or extra; all lists ascend by time. */
export type HitMatching = {
  readonly pairs: readonly HitPair[];
  readonly missed: readonly ExpectedHit[];
  readonly extra: readonly PlayedHit[];
};

/** Pairs the times of one row of hits; both lists ascend, and so must the pairs. */
export type PairRow = (expected: readonly Seconds[], played: readonly Seconds[]) => TimePair[];

/**
 * Pairs each expected hit with at most one played hit no more than `windowSec` away, each hand in
 * order, with as many pairs as possible and, among those, the least total deviation. Both lists
 * ascend; empty ones give no pairs. Hands are kept apart where every hit of both lists tells its
 * hand; otherwise all hits are one row. Which keys were struck does not matter here. A player who
 * may drift from the music is matched by `matchTake`.
 */
export function matchHits(
  expected: readonly ExpectedHit[],
  played: readonly PlayedHit[],
  windowSec: Seconds,
): HitMatching {
  return matchRows(expected, played, (expectedSec, playedSec) =>
    pairTimes(expectedSec, playedSec, windowSec),
  );
}

/** The same rows of hits as `matchHits`, paired by `pairRow`. */
export function matchRows(
  expected: readonly ExpectedHit[],
  played: readonly PlayedHit[],
  pairRow: PairRow,
): HitMatching {
  const pairs = hitRows(expected, played)
    .flatMap((row) => pairsIn(row, pairRow))
    .toSorted((a, b) => a.expected.atSec - b.expected.atSec);
  const answered = new Set(pairs.map((pair) => pair.expected));
  const meant = new Set(pairs.map((pair) => pair.played));
  return {
    pairs,
    missed: expected.filter((hit) => !answered.has(hit)),
    extra: played.filter((hit) => !meant.has(hit)),
  };
}

/** Hits that are paired with each other only. */
export type HitRow = {
  readonly expected: readonly ExpectedHit[];
  readonly played: readonly PlayedHit[];
};

/** The hits of each hand, or all in one row where some do not tell their hand. */
export function hitRows(expected: readonly ExpectedHit[], played: readonly PlayedHit[]): HitRow[] {
  const tellHands =
    expected.every((hit) => hit.hand !== 'both') && played.every((hit) => hit.hand !== undefined);
  if (!tellHands) return [{ expected, played }];
  const rowOf = (hand: HandName): HitRow => ({
    expected: expected.filter((hit) => hit.hand === hand),
    played: played.filter((hit) => hit.hand === hand),
  });
  return [rowOf('left'), rowOf('right')];
}

function pairsIn({ expected, played }: HitRow, pairRow: PairRow): HitPair[] {
  const places = pairRow(
    expected.map((hit) => hit.atSec),
    played.map((hit) => hit.atSec),
  );
  return places.map((place) => {
    const [meant, struck] = [expected[place.expected]!, played[place.played]!];
    return { expected: meant, played: struck, deviationSec: struck.atSec - meant.atSec };
  });
}
