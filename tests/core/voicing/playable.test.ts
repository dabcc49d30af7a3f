import { describe, expect, it } from 'vitest';
import {
  fitsHand,
  isClear,
  LOW_INTERVAL_LIMITS,
  semitonesTooLow,
} from '../../../src/core/voicing/playable.ts';
import { DEFAULT_VOICING } from '../../../src/core/voicing/voicing.ts';

/**
 * Lowest lower notes, from a glossary page of low-interval limits (docs/sources.md#low-interval-limits)
 * moved to C4 = 60; the tritone is printed an octave lower there, likely a slip.
 */
const PRINTED_LIMITS: readonly (readonly [string, number, number])[] = [
  ['minor second, E3', 1, 52],
  ['major second, E♭3', 2, 51],
  ['minor third, C3', 3, 48],
  ['major third, B2', 4, 47],
  ['fourth, A2', 5, 45],
  ['tritone, B2', 6, 47],
  ['fifth, C♯2', 7, 37],
  ['minor sixth, F2', 8, 41],
  ['major sixth, F2', 9, 41],
  ['minor seventh, F2', 10, 41],
  ['major seventh, F2', 11, 41],
];

/** What handbooks differ by (docs/sources.md#low-interval-limits). */
const SLACK = 3;

describe('low intervals', () => {
  it.each(PRINTED_LIMITS)(
    '%s, is clear above its printed limit and unclear below, give or take the slack',
    (_, size, limit) => {
      expect(isClear([limit + SLACK, limit + SLACK + size])).toBe(true);
      expect(isClear([limit - SLACK - 1, limit - SLACK - 1 + size])).toBe(false);
    },
  );

  it.each(PRINTED_LIMITS)('%s, is what the table has', (_, size, limit) => {
    expect(LOW_INTERVAL_LIMITS[size]).toBe(limit);
  });

  // from memory: other handbooks have M3 and P4 at B♭2, P5 at B♭1, m6 at G2.
  it.each([
    [4, 46],
    [5, 46],
    [7, 34],
    [8, 43],
  ])('the limit of %i semitones agrees with other handbooks within the slack', (size, limit) =>
    expect(Math.abs(LOW_INTERVAL_LIMITS[size]! - limit)).toBeLessThanOrEqual(SLACK),
  );

  it('has a limit for every interval smaller than an octave and none for wider ones', () => {
    expect(Object.keys(LOW_INTERVAL_LIMITS).map(Number)).toEqual(
      PRINTED_LIMITS.map(([, size]) => size),
    );
    expect(isClear([21, 33])).toBe(true);
    expect(isClear([21, 37])).toBe(true);
  });

  it('counts every two of the keys, in any order', () => {
    expect(isClear([36, 43, 48])).toBe(false);
    expect(isClear([48, 55, 36])).toBe(true);
    // C2–E2 lies 11 under B2, E2–G2 8 under C3, C2–G2 1 under C♯2: computed
    expect(semitonesTooLow([43, 36, 40])).toBe(20);
    expect(isClear([])).toBe(true);
    expect(isClear([21])).toBe(true);
  });
});

describe('a hand', () => {
  it('reaches an octave unless the player says otherwise (common practice)', () => {
    expect(DEFAULT_VOICING.spanSemitones).toBe(12);
    expect(fitsHand([60, 72], DEFAULT_VOICING.spanSemitones)).toBe(true);
    expect(fitsHand([60, 73], DEFAULT_VOICING.spanSemitones)).toBe(false);
  });

  // White keys are 23.5 mm apart (a keyboard article, docs/sources.md#hand-spans): the reach of an
  // octave, a ninth and a tenth in semitones, in millimetres and in whole keys.
  it.each([
    ['octave', 12, 72, 164.5],
    ['ninth', 14, 74, 188],
    ['tenth', 16, 76, 211.5],
  ])('with the span of the %s holds that interval on white keys', (_, span, upper, reachMm) => {
    const whiteKeys = [62, 64, 65, 67, 69, 71, 72, 74, 76].filter((key) => key <= upper).length;
    expect(whiteKeys * 23.5).toBe(reachMm);
    expect(fitsHand([60, upper], span)).toBe(true);
    expect(fitsHand([60, upper + 1], span)).toBe(false);
  });

  it('has five fingers, each for a key of its own', () => {
    expect(fitsHand([60, 62, 64, 65, 67], 12)).toBe(true);
    expect(fitsHand([60, 62, 64, 65, 67, 69], 12)).toBe(false);
    expect(fitsHand([60, 60], 12)).toBe(false);
    expect(fitsHand([67, 60], 7)).toBe(true);
    expect(fitsHand([], 12)).toBe(true);
  });
});
