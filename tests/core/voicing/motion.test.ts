import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { KeyNumber } from '../../../src/core/harmony/pitch.ts';
import { motion } from '../../../src/core/voicing/motion.ts';

/** Chords of `size` keys, in any order, keys doubled or not. */
const keys = (size: number) =>
  fc.array(fc.integer({ min: 40, max: 90 }), { minLength: size, maxLength: size });

/** Three chords of one size. */
const threeChords = () =>
  fc.integer({ min: 1, max: 5 }).chain((size) => fc.tuple(keys(size), keys(size), keys(size)));

/** Two chords of up to five keys each. */
const twoChords = () =>
  fc
    .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 }))
    .chain(([a, b]) => fc.tuple(keys(a), keys(b)));

const ascending = (chord: readonly KeyNumber[]) => chord.toSorted((x, y) => x - y);

/** Every way to give each of `count` notes one of `places` places. */
function assignments(count: number, places: number): number[][] {
  if (count === 0) return [[]];
  return assignments(count - 1, places).flatMap((rest) =>
    Array.from({ length: places }, (_, place) => [...rest, place]),
  );
}

/** The least total over every way to lead the larger chord's notes to the smaller one's, all of which are met. */
function searchedMotion(a: readonly KeyNumber[], b: readonly KeyNumber[]): number {
  const [fewer, more] = a.length < b.length ? [a, b] : [b, a];
  const totals = assignments(more.length, fewer.length)
    .filter((places) => new Set(places).size === fewer.length)
    .map((places) =>
      places.reduce((total, place, i) => total + Math.abs(more[i]! - fewer[place]!), 0),
    );
  return Math.min(...totals);
}

describe('motion', () => {
  it('is a metric on chords of one size', () =>
    fc.assert(
      fc.property(threeChords(), ([a, b, c]) => {
        const isSame = ascending(a).join() === ascending(b).join();
        expect(motion(a, b) === 0).toBe(isSame);
        expect(motion(a, a)).toBe(0);
        expect(motion(a, b)).toBe(motion(b, a));
        expect(motion(a, c)).toBeLessThanOrEqual(motion(a, b) + motion(b, c));
      }),
    ));

  it('is the least over all pairings, whatever the sizes, and the same both ways', () =>
    fc.assert(
      fc.property(twoChords(), ([a, b]) => {
        expect(motion(a, b)).toBe(searchedMotion(a, b));
        expect(motion(b, a)).toBe(motion(a, b));
      }),
      { numRuns: 60 },
    ));

  it('does not change when both chords are transposed', () =>
    fc.assert(
      fc.property(twoChords(), fc.integer({ min: -20, max: 20 }), ([a, b], shift) => {
        const moved = motion(
          a.map((key) => key + shift),
          b.map((key) => key + shift),
        );
        expect(moved).toBe(motion(a, b));
      }),
    ));

  // computed
  it.each([
    [[60, 64, 67], [60, 65, 69], 3],
    [[67, 60, 64], [69, 65, 60], 3],
    [[60, 64, 67], [60, 64, 67, 70], 3],
    [[60, 64, 67, 71], [60, 64, 67], 4],
    [[60], [48, 60, 72], 24],
    [[60, 62], [61, 61], 2],
    [[60, 64], [], 0],
    [[], [], 0],
  ])('from %j to %j is %i', (from, to, semitones) => expect(motion(from, to)).toBe(semitones));
});
