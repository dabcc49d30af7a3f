import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { LIMITER_CEILING, LIMITER_KNEE, limited } from '../../src/audio/limiter.ts';

const anySample = () => fc.double({ min: -1e6, max: 1e6, noNaN: true });

it('leaves everything up to −6 dBFS exactly as it is', () => {
  const quiet = fc.double({ min: -LIMITER_KNEE, max: LIMITER_KNEE, noNaN: true });
  fc.assert(
    fc.property(quiet, (sample) => {
      expect(limited(sample)).toBe(sample);
    }),
  );
});

it('never exceeds its ceiling, which is under −1 dBFS', () => {
  fc.assert(fc.property(anySample(), (sample) => Math.abs(limited(sample)) <= LIMITER_CEILING));
  expect(20 * Math.log10(LIMITER_CEILING)).toBeLessThan(-1);
});

it('keeps louder samples louder and is the same upside down', () => {
  fc.assert(
    fc.property(anySample(), anySample(), (a, b) => {
      expect(limited(Math.max(a, b))).toBeGreaterThanOrEqual(limited(Math.min(a, b)));
      expect(limited(-a)).toBe(-limited(a));
    }),
  );
});

it('bends without a corner at the knee', () => {
  const step = 1e-4;
  const rise = limited(LIMITER_KNEE + step) - limited(LIMITER_KNEE);
  expect(rise / step).toBeCloseTo(1, 5);
});
