import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { matchTake } from '../../../src/core/practice/matchTake.ts';
import { expectedHit, playedHit } from '../../support/takes.ts';

const HANDS = ['left', 'right'] as const;

/** What is expected of both hands: a hit every quarter of a second, for as long as a short pass. */
const MEANT = Array.from({ length: 40 }, (_, i) => expectedHit(i / 4, HANDS[i % 3 === 0 ? 0 : 1]));

/** Some first hits of it, each up to 0.14 s early or late, as they are known while it still goes on. */
const begun = fc.array(fc.option(fc.integer({ min: -35, max: 35 })), { maxLength: 8 }).map((all) =>
  all
    .flatMap((late, i) => {
      const { atSec, hand } = MEANT[i]!;
      return late === null ? [] : [playedHit(atSec + late / 250, hand as 'left' | 'right')];
    })
    .toSorted((a, b) => a.atSec - b.atSec),
);

it('however it begins, every hit is paired, left out or one too many, in order', () =>
  fc.assert(
    fc.property(begun, (played) => {
      const { pairs, missed, extra } = matchTake(MEANT, played);
      expect(pairs.length + missed.length).toBe(MEANT.length);
      expect(pairs.length + extra.length).toBe(played.length);
      for (const hand of HANDS) {
        const own = pairs.filter((pair) => pair.expected.hand === hand);
        const times = own.map((pair) => pair.played.atSec);
        expect(times).toEqual(times.toSorted((a, b) => a - b));
      }
    }),
    { numRuns: 2000 },
  ));

it('ignores hits without a finite time, and answers however late a hit is', () => {
  const odd = [Number.NaN, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const meant = [expectedHit(odd[1]!), expectedHit(0), expectedHit(1), expectedHit(odd[0]!)];
  const played = [odd[0]!, 0.01, 1.01, odd[2]!, 1e300].map((sec) => playedHit(sec));
  const { pairs, missed, extra } = matchTake(meant, played);
  expect(pairs.map((pair) => pair.played.atSec)).toEqual([0.01, 1.01]);
  expect(missed).toEqual([]);
  expect(extra.map(({ atSec }) => atSec)).toEqual([1e300]);
  expect(
    matchTake(
      meant,
      odd.map((sec) => playedHit(sec)),
    ).pairs,
  ).toEqual([]);
});
