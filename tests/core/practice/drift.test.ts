import { describe, expect, it } from 'vitest';
import { type DriftPoint, fitDrift } from '../../../src/core/practice/drift.ts';
import { seededRandom } from '../../support/random.ts';

/** Hits of two hands every half second, 10 ms late and 10 ms early, uneven by `spreadSec`, on a course. */
function points(count: number, spreadSec: number, course: (sec: number) => number): DriftPoint[] {
  const random = seededRandom(7);
  return Array.from({ length: count }, (_, i) => {
    const atSec = i / 2;
    const isLeft = i % 3 === 0;
    const own = (isLeft ? 0.01 : -0.01) + spreadSec * random.normal();
    return { group: isLeft ? 'left' : 'right', atSec, deviationSec: own + course(atSec) };
  });
}

const straight = (percent: number) => (sec: number) => sec / (1 + percent / 100) - sec;

describe('the drift of a take', () => {
  it.each([3, 1, -2])('of %d per cent all along is told as such', (percent) => {
    const { drift, terms } = fitDrift(points(120, 0.01, straight(percent)));
    expect(terms).toBe(1);
    expect(drift?.fasterPercent).toBeCloseTo(percent, 1);
    expect(drift?.gainPercent).toBe(0);
  });

  it('that grows is told by the end against the beginning', () => {
    // Tempo t(s) = 1 / (1 − 0.02 · s / 60): 1 at first, 1.0204 at the end, 1.0101 on average.
    const { drift } = fitDrift(points(121, 0.005, (sec) => (-0.02 * sec * sec) / 120));
    expect(drift?.gainPercent).toBeCloseTo(2.04, 1);
    expect(drift?.fasterPercent).toBeCloseTo(1.01, 1);
  });

  it('is none where hits are only uneven, or hands apart', () => {
    const fit = fitDrift(points(120, 0.03, () => 0));
    expect(fit.drift).toBeUndefined();
    expect(fit.terms).toBe(0);
  });

  it('is none where too few hits could show it', () =>
    expect(fitDrift(points(7, 0, straight(3))).drift).toBeUndefined());

  it('is taken out of the deviations, but not each hand’s lateness', () => {
    const { withoutDrift } = fitDrift(points(120, 0, straight(2)));
    const meanOfCourse = -(0.02 / 1.02) * 29.75;
    withoutDrift.forEach((deviation, i) =>
      expect(deviation - (i % 3 === 0 ? 0.01 : -0.01)).toBeCloseTo(meanOfCourse, 1),
    );
    const left = withoutDrift.filter((_, i) => i % 3 === 0);
    expect(Math.max(...left) - Math.min(...left)).toBeLessThan(1e-9);
  });

  it('leaves hits that all fall together as they are', () => {
    const together = Array.from({ length: 10 }, () => ({
      group: 'left',
      atSec: 1,
      deviationSec: 0.01,
    }));
    expect(fitDrift(together)).toEqual({ withoutDrift: Array(10).fill(0.01), terms: 0 });
  });
});
