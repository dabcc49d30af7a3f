import type { Seconds } from '../../core/time/ticks.ts';

/** Length of a click: long enough to have a pitch, short enough to be heard as one point in time. */
export const CLICK_SEC: Seconds = 0.004;

/**
 * A click: `CLICK_SEC` of a cosine of `freqHz` under a falling parabola. Its first sample is its
 * highest (1), so the attack stands exactly where the sound starts; its last is next to zero.
 */
export function clickBurst(freqHz: number, sampleRate: number): Float32Array<ArrayBuffer> {
  const length = Math.round(CLICK_SEC * sampleRate);
  return Float32Array.from({ length }, (_, i) => {
    const left = 1 - i / length;
    return left * left * Math.cos((2 * Math.PI * freqHz * i) / sampleRate);
  });
}
