import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  gradeOf,
  NARROWEST_BAND_SEC,
  noticeableShiftSec,
  toleranceBands,
} from '../../../src/core/practice/tolerance.ts';

// Friberg & Sundberg 1995, worked out row by row (docs/sources.md#timing-tolerance).
it.each([
  [100, 6],
  [200, 6],
  [300, 7.5],
  [400, 10],
  [500, 12.5],
  [600, 15],
  [750, 18.75],
  [1000, 25],
])('between hits %d ms apart a shift of %d ms is just noticed', (gapMs, shiftMs) =>
  expect(1000 * noticeableShiftSec(gapMs / 1000)).toBeCloseTo(shiftMs, 9),
);

it('there is no shift between hits without a gap', () =>
  expect(() => noticeableShiftSec(0)).toThrow('after 0 s'));

describe('the bands of tolerance', () => {
  // 20, 35 and 50 ms at a gap of 500 ms: common practice. The other rows follow from the noticed shift.
  it.each([
    [500, [20, 35, 50]],
    [1000, [40, 70, 100]],
    [240, [10, 16.8, 24]],
    [100, [10, 16.8, 24]],
  ])('at %d ms are %j ms wide', (gapMs, widths) => {
    const bands = toleranceBands(gapMs / 1000);
    const ms = [bands['very-good'], bands.good, bands.fair].map((sec) => 1000 * sec);
    ms.forEach((width, i) => expect(width).toBeCloseTo(widths[i]!, 9));
  });

  it('never widen as hits come faster, and none is narrower than players hear', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        (one, other) => {
          const [fast, slow] = [Math.min(one, other), Math.max(one, other)].map(toleranceBands);
          for (const grade of ['very-good', 'good', 'fair'] as const) {
            expect(fast![grade]).toBeLessThanOrEqual(slow![grade]);
            expect(fast![grade]).toBeGreaterThanOrEqual(NARROWEST_BAND_SEC);
          }
        },
      ),
    ));
});

it.each([
  [-19, 'very-good'],
  [21, 'good'],
  [-34, 'good'],
  [49, 'fair'],
  [-51, 'off'],
] as const)('at a gap of 500 ms a hit %d ms from its place is %s', (ms, grade) =>
  expect(gradeOf(ms / 1000, 0.5)).toBe(grade),
);
