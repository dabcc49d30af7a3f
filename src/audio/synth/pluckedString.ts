import type { Seconds } from '../../core/time/ticks.ts';
import { whiteNoise } from './whiteNoise.ts';

/** Where the string is plucked, as a share of its length: nearer the bridge sounds thinner. */
const PLUCK_PLACE = 0.18;

/** Time in which the string falls to a thousandth, for its fundamental. */
const RING_SEC: Seconds = 3;

/** Length of the rendered sound. */
const LENGTH_SEC: Seconds = 3;

function noiseBurst(length: number, seed: number): number[] {
  const noise = whiteNoise(seed);
  let soft = 0;
  return Array.from({ length }, () => {
    soft += 0.4 * (noise() - soft);
    return soft;
  });
}

/** One period of noise without the overtones that have a node where the string is plucked. */
function pluck(periodSamples: number, seed: number): number[] {
  const burst = noiseBurst(periodSamples, seed);
  const mean = burst.reduce((sum, x) => sum + x, 0) / periodSamples;
  const shift = Math.max(1, Math.round(PLUCK_PLACE * periodSamples));
  return burst.map((x, i) => x - (i < shift ? mean : burst[i - shift]!));
}

/**
 * A plucked string of `freqHz`, `LENGTH_SEC` seconds long, first sample not zero, no fixed
 * loudness: a loop as long as one period, averaged over two samples each time round (Karplus &
 * Strong 1983), tuned by an all-pass filter for the part of a sample (Jaffe & Smith 1983).
 */
export function pluckedString(freqHz: number, sampleRate: number): Float32Array<ArrayBuffer> {
  const period = sampleRate / freqHz;
  const whole = Math.floor(period - 0.6);
  const rest = period - 0.5 - whole;
  const allPass = (1 - rest) / (1 + rest);
  const loss = 10 ** (-3 / (freqHz * RING_SEC));
  const out = new Float32Array(Math.round(LENGTH_SEC * sampleRate));
  out.set(pluck(whole, Math.round(freqHz)));
  let lastMean = 0;
  let lastTuned = 0;
  for (let i = whole; i < out.length; i++) {
    const mean = (loss * (out[i - whole]! + (out[i - whole - 1] ?? 0))) / 2;
    lastTuned = allPass * (mean - lastTuned) + lastMean;
    lastMean = mean;
    out[i]! += lastTuned;
  }
  return out;
}
