import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CALIBRATION, calibrate, robustCentre } from '../../../src/core/practice/calibration.ts';
import { errorOf, valueOf } from '../../support/music.ts';
import { seededRandom } from '../../support/random.ts';

const CLICKS = Array.from({ length: CALIBRATION.beats }, (_, i) => 3 + (i * 60) / CALIBRATION.bpm);

describe('the latency of an input', () => {
  it.each([-0.12, 0, 0.005, 0.03, 0.18, 0.45])(
    'of %d s is told exactly where all hits are even',
    (latencySec) => {
      const calibration = valueOf(
        calibrate(
          CLICKS,
          CLICKS.map((sec) => sec + latencySec),
        ),
      );
      expect(calibration.latencySec).toBeCloseTo(latencySec, 9);
      expect(calibration.spreadMs).toBeCloseTo(0, 6);
      expect(calibration.hits).toBe(16);
    },
  );

  it('is found within 10 ms by anyone who plays as evenly as musicians tap', () => {
    // Musicians tap with a spread of 2 to 4 % of the gap (from memory): up to 27 ms here.
    const errors = Array.from({ length: 200 }, (_, seed) => {
      const random = seededRandom(seed + 1);
      const hits = CLICKS.map((sec) => sec + 0.08 + 0.015 * random.normal());
      return Math.abs(valueOf(calibrate(CLICKS, hits)).latencySec - 0.08);
    });
    // Sixteen hits of 15 ms spread: standard error 3.8 ms; 10 ms is 2.6 times that.
    expect(errors.filter((error) => error > 0.01).length).toBeLessThan(6);
  });

  it('is hardly moved by two hits far off, an extra hit and a missed click', () => {
    const hits = CLICKS.map((sec, i) => sec + 0.05 + (i === 3 ? 0.1 : 0) - (i === 9 ? 0.09 : 0));
    const played = [...hits.filter((_, i) => i !== 5), CLICKS[5]! + 0.4];
    const even = calibrate(CLICKS, played);
    expect(valueOf(even).latencySec).toBeCloseTo(0.05, 2);
  });

  it('is not told from too few hits', () => {
    const few = CLICKS.slice(0, 11).map((sec) => sec + 0.02);
    expect(errorOf(calibrate(CLICKS, few))).toEqual({ kind: 'too-few-hits', hits: 11, needed: 12 });
    expect(errorOf(calibrate(CLICKS, []))).toMatchObject({ kind: 'too-few-hits', hits: 0 });
  });

  it('is not told from hits that scatter', () => {
    const hits = CLICKS.map((sec, i) => sec + (i % 2 === 0 ? 0.06 : -0.045));
    expect(errorOf(calibrate(CLICKS, hits))).toMatchObject({ kind: 'too-uneven' });
  });
});

describe('the centre of some values', () => {
  // Pairs of 0 0 3: 0 0 1.5 0 1.5 3, so the middle two are 0 and 1.5.
  it('is the median of the means of pairs', () => expect(robustCentre([0, 0, 3])).toBe(0.75));

  it('moves with its values and lies among them', () =>
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 1, maxLength: 12 }),
        fc.integer({ min: -100, max: 100 }),
        (values, shift) => {
          const centre = robustCentre(values);
          expect(robustCentre(values.map((value) => value + shift))).toBe(centre + shift);
          expect(centre).toBeGreaterThanOrEqual(Math.min(...values));
          expect(centre).toBeLessThanOrEqual(Math.max(...values));
        },
      ),
    ));
});
