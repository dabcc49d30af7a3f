import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type HitMatching, matchHits } from '../../../src/core/practice/matchHits.ts';
import { pairTimes } from '../../../src/core/practice/pairTimes.ts';
import { expectedHit, playedHit } from '../../support/takes.ts';

/** `expected>played` for each pair, then what was missed and what was extra. */
function told({ pairs, missed, extra }: HitMatching): string[] {
  return [
    ...pairs.map((pair) => `${pair.expected.atSec}>${pair.played.atSec}`),
    ...missed.map((hit) => `missed ${hit.atSec}`),
    ...extra.map((hit) => `extra ${hit.atSec}`),
  ];
}

/** All hits in one row, as a microphone hears them. */
function heard(expected: readonly number[], played: readonly number[], windowSec = 0.1): string[] {
  return told(
    matchHits(
      expected.map((at) => expectedHit(at)),
      played.map((at) => playedHit(at)),
      windowSec,
    ),
  );
}

describe('matching played hits with expected ones', () => {
  it('pairs a perfect take hit for hit', () =>
    expect(heard([0, 1, 2], [0, 1, 2])).toEqual(['0>0', '1>1', '2>2']));

  it('misses everything where nothing was played', () =>
    expect(heard([0, 1], [])).toEqual(['missed 0', 'missed 1']));

  it('finds everything extra where nothing was expected', () =>
    expect(heard([], [0, 1])).toEqual(['extra 0', 'extra 1']));

  it('pairs nothing where all is played between the places', () =>
    expect(heard([0, 1], [0.5, 1.5])).toEqual(['missed 0', 'missed 1', 'extra 0.5', 'extra 1.5']));

  it('tells early from late', () => {
    const matching = matchHits(
      [expectedHit(1), expectedHit(2)],
      [playedHit(0.95), playedHit(2.03)],
      0.1,
    );
    expect(matching.pairs[0]?.deviationSec).toBeCloseTo(-0.05, 12);
    expect(matching.pairs[1]?.deviationSec).toBeCloseTo(0.03, 12);
  });

  // The nearest search would give 1.04 to 1.0 and leave 1.1 without a hit.
  it('gives up a nearer pair for one pair more', () =>
    expect(heard([1, 1.1], [0.93, 1.04])).toEqual(['1>0.93', '1.1>1.04']));

  it('takes the nearer of two hits for one place', () =>
    expect(heard([1], [0.95, 1.02])).toEqual(['1>1.02', 'extra 0.95']));

  it('lets one late hit not shift the hits after it', () =>
    expect(heard([0, 0.25, 0.5, 0.75], [0, 0.34, 0.5, 0.75])).toEqual([
      '0>0',
      '0.25>0.34',
      '0.5>0.5',
      '0.75>0.75',
    ]));

  it('counts the window’s edge as inside', () => {
    expect(heard([1], [1.125], 0.125)).toEqual(['1>1.125']);
    expect(heard([1], [1.1251], 0.125)).toEqual(['missed 1', 'extra 1.1251']);
  });

  it('keeps the hands apart where both lists tell them', () => {
    const expected = [expectedHit(1, 'left'), expectedHit(1, 'right'), expectedHit(2, 'left')];
    const played = [playedHit(0.98, 'right'), playedHit(1.01, 'left'), playedHit(2, 'right')];
    expect(told(matchHits(expected, played, 0.1))).toEqual([
      '1>1.01',
      '1>0.98',
      'missed 2',
      'extra 2',
    ]);
  });

  it('asks for lists that ascend', () =>
    expect(() => heard([1, 0], [0])).toThrow('times must ascend: 1, 0'));
});

/** Every way to pair in order within the window, the empty one included: how many pairs and how far in all. */
function everyPairing(
  expected: readonly number[],
  played: readonly number[],
  windowSec: number,
): { pairs: number; total: number }[] {
  const [first, ...rest] = expected;
  if (first === undefined) return [{ pairs: 0, total: 0 }];
  const without = everyPairing(rest, played, windowSec);
  const withFirst = played.flatMap((at, i) => {
    const distance = Math.abs(at - first);
    if (distance > windowSec) return [];
    return everyPairing(rest, played.slice(i + 1), windowSec).map(({ pairs, total }) => ({
      pairs: pairs + 1,
      total: total + distance,
    }));
  });
  return [...without, ...withFirst];
}

describe('pairs of times', () => {
  const times = fc
    .array(fc.integer({ min: 0, max: 60 }), { maxLength: 7 })
    .map((all) => all.toSorted((a, b) => a - b).map((t) => t / 64));
  const windows = fc.integer({ min: 0, max: 30 }).map((w) => w / 64);

  it('are as many and as near as an exhaustive search finds', () =>
    fc.assert(
      fc.property(times, times, windows, (expected, played, windowSec) => {
        const found = pairTimes(expected, played, windowSec);
        const total = found.reduce(
          (sum, pair) => sum + Math.abs(played[pair.played]! - expected[pair.expected]!),
          0,
        );
        const all = everyPairing(expected, played, windowSec);
        const most = Math.max(...all.map((way) => way.pairs));
        const least = Math.min(...all.filter((way) => way.pairs === most).map((way) => way.total));
        expect(found.length).toBe(most);
        expect(total).toBe(least);
      }),
      { numRuns: 1000 },
    ));

  it('are one to one, in order and within the window', () =>
    fc.assert(
      fc.property(times, times, windows, (expected, played, windowSec) => {
        const found = pairTimes(expected, played, windowSec);
        found.slice(1).forEach((pair, i) => {
          expect(pair.expected).toBeGreaterThan(found[i]!.expected);
          expect(pair.played).toBeGreaterThan(found[i]!.played);
        });
        for (const pair of found)
          expect(Math.abs(played[pair.played]! - expected[pair.expected]!)).toBeLessThanOrEqual(
            windowSec,
          );
      }),
    ));

  it('of ten minutes of sixteenths are found', () => {
    const expected = Array.from({ length: 4800 }, (_, i) => i * 0.125);
    const played = expected.map((at, i) => at + 0.02 * Math.sin(i));
    expect(pairTimes(expected, played, 0.15)).toHaveLength(4800);
  });
});
