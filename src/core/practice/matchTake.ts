import type { Seconds } from '../time/ticks.ts';
import type { ExpectedHit } from './expectedHits.ts';
import { localLine, type TimedValue } from './localLine.ts';
import { type HitMatching, type HitRow, hitRows, matchRows } from './matchHits.ts';
import { pairTimes } from './pairTimes.ts';
import { type LagAt, playedCourse, type TimeRow } from './playedCourse.ts';
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

/** The course is smoothed over so much to either side: long enough to level unevenness, short enough to bend. */
const SMOOTHED_SEC: Seconds = 4;

/** Hits that lie so many times as far from the course as usual (the median) do not shape it. */
const FAR_OFF = 4;

/**
 * Pairs the hits of a take as `matchHits` does, but `windowSec` is counted from where the player is
 * by then: a slow drift from the music is followed, first roughly (`playedCourse`), then along the
 * pairs that this gives. Deviations are still played − expected, so they grow with the drift. Hits
 * without a finite time are ignored: they are in none of the lists.
 */
export function matchTake(
  expectedHits: readonly ExpectedHit[],
  playedHits: readonly PlayedHit[],
  windowSec: Seconds = matchWindowSec(expectedHits.filter(hasTime)),
): HitMatching {
  const expected = expectedHits.filter(hasTime);
  const played = playedHits.filter(hasTime);
  const along = (lagAt: LagAt) =>
    matchRows(expected, played, (expectedSec, playedSec) =>
      pairTimes(alongCourse(expectedSec, lagAt), playedSec, windowSec),
    );
  const { pairs } = along(playedCourse(hitRows(expected, played).map(timesOf)));
  if (pairs.length === 0) return along(() => 0);
  const lags = pairs.map((pair) => ({ atSec: pair.expected.atSec, value: pair.deviationSec }));
  return along(steadyCourse(lags));
}

function hasTime({ atSec }: { readonly atSec: Seconds }): boolean {
  return Number.isFinite(atSec);
}

/** Where a player is at expected times; in their order, however steep the course is made out to be. */
function alongCourse(expectedSec: readonly Seconds[], lagAt: LagAt): Seconds[] {
  let before = Number.NEGATIVE_INFINITY;
  return expectedSec.map((sec) => (before = Math.max(before, sec + lagAt(sec))));
}

/** The lags smoothed; before the first and after the last they stay, as a line through few of them leads astray. */
function steadyCourse(lags: readonly TimedValue[]): LagAt {
  const course = smoothed(lags);
  const [firstSec, lastSec] = [lags[0]!.atSec, lags.at(-1)!.atSec];
  return (sec) => course(Math.min(Math.max(sec, firstSec), lastSec));
}

/** The lags smoothed, without those so far off that they would pull the course towards them. */
function smoothed(lags: readonly TimedValue[]): LagAt {
  const course = localLine(lags, SMOOTHED_SEC);
  const offs = lags.map(({ atSec, value }) => Math.abs(value - course(atSec)));
  const usual = offs.toSorted((a, b) => a - b)[offs.length >> 1]!;
  return localLine(
    lags.filter((_, i) => offs[i]! <= FAR_OFF * usual),
    SMOOTHED_SEC,
  );
}

function timesOf(row: HitRow): TimeRow {
  return {
    expected: row.expected.map((hit) => hit.atSec),
    played: row.played.map((hit) => hit.atSec),
  };
}
