import type { Seconds } from '../time/ticks.ts';
import type { ExpectedHit } from './expectedHits.ts';
import { type HitMatching, hitRows, matchRows } from './matchHits.ts';
import { pairTimes } from './pairTimes.ts';
import { playedCourse } from './playedCourse.ts';
import type { PlayedHit } from './playedHits.ts';

/** A hit farther from its place than this is another hit, at any tempo. */
export const WIDEST_WINDOW_SEC: Seconds = 0.15;

/** However fast the hits: players are less even than that now and then. */
const NARROWEST_WINDOW_SEC: Seconds = 0.06;

/**
 * How far from its place a hit still counts as played: half of the usual gap (the median) between
 * the hits of a row, so that it is nearer to no other place, from 60 to 150 ms. Our own choice.
 */
export function matchWindowSec(expected: readonly ExpectedHit[]): Seconds {
  const gaps = hitRows(expected, [])
    .flatMap((row) => row.expected.slice(1).map((hit, i) => hit.atSec - row.expected[i]!.atSec))
    .toSorted((a, b) => a - b);
  const usual = gaps[gaps.length >> 1] ?? Number.POSITIVE_INFINITY;
  return Math.min(Math.max(usual / 2, NARROWEST_WINDOW_SEC), WIDEST_WINDOW_SEC);
}

/**
 * Pairs the hits of a take as `matchHits` does, but `windowSec` is counted from where the player is
 * by then: a slow drift from the music (`playedCourse`) is followed. Deviations are still played −
 * expected, so they grow with the drift.
 */
export function matchTake(
  expected: readonly ExpectedHit[],
  played: readonly PlayedHit[],
  windowSec: Seconds = matchWindowSec(expected),
): HitMatching {
  const lagAt = playedCourse(
    hitRows(expected, played).map((row) => ({
      expected: row.expected.map((hit) => hit.atSec),
      played: row.played.map((hit) => hit.atSec),
    })),
  );
  return matchRows(expected, played, (expectedSec, playedSec) =>
    pairTimes(
      expectedSec.map((sec) => sec + lagAt(sec)),
      playedSec,
      windowSec,
    ),
  );
}
