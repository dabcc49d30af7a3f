import { expect, it } from 'vitest';
import { LISTENING_RATE_HZ, resample } from '../../src/signal/resample.ts';

function sine(freqHz: number, sampleRateHz: number, sec: number): Float32Array {
  return Float32Array.from({ length: Math.round(sec * sampleRateHz) }, (_, i) =>
    Math.sin((2 * Math.PI * freqHz * i) / sampleRateHz),
  );
}

/** The largest difference away from the ends, where silence begins. */
function largestError(a: Float32Array, b: Float32Array): number {
  let most = 0;
  for (let i = 500; i < Math.min(a.length, b.length) - 500; i++)
    most = Math.max(most, Math.abs(a[i]! - b[i]!));
  return most;
}

it.each([8000, 16000, 32000, 44100, 48000, 88200, 96000, 192000, 44056, 22051.5])(
  'keeps a tone where it is, from %i Hz',
  (sampleRateHz) => {
    const resampled = resample({ samples: sine(1000, sampleRateHz, 0.3), sampleRateHz });
    expect(Math.abs(resampled.length - 6615)).toBeLessThanOrEqual(1);
    expect(largestError(resampled, sine(1000, LISTENING_RATE_HZ, 0.3))).toBeLessThan(2e-3);
  },
);

it.each([44100, 48000, 96000])(
  'lets nothing fold back from above half the rate, from %i Hz',
  (rate) => {
    const resampled = resample({ samples: sine(12500, rate, 0.3), sampleRateHz: rate });
    expect(largestError(resampled, new Float32Array(resampled.length))).toBeLessThan(2e-3);
  },
);

it('gives back what has the rate already', () => {
  const samples = sine(440, LISTENING_RATE_HZ, 0.1);
  expect(resample({ samples, sampleRateHz: LISTENING_RATE_HZ })).toBe(samples);
});

it('takes what is no number for silence', () => {
  const samples = new Float32Array(4410).fill(Number.NaN);
  samples[2000] = Number.POSITIVE_INFINITY;
  expect(resample({ samples, sampleRateHz: 44100 })).toEqual(new Float32Array(2205));
});

it('has nothing to give for nothing', () => {
  expect(resample({ samples: new Float32Array(0), sampleRateHz: 44100 })).toHaveLength(0);
});
