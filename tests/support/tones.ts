import type { Seconds } from '../../src/core/time/ticks.ts';
import { seededRandom } from './random.ts';

/** A struck tone: eight harmonics that die away, each the sooner the higher, after a sudden beginning. */
export type StruckTone = {
  readonly atSec: Seconds;
  readonly freqHz: number;
  readonly amplitude: number;
};

/** Struck tones in a sound of so many seconds, with noise of so much rms under all of it. */
export function struckTones(
  tones: readonly StruckTone[],
  durationSec: Seconds,
  sampleRate: number,
  noise = 0.0003,
): Float32Array {
  const random = seededRandom(5);
  const samples = Float32Array.from(
    { length: Math.round(durationSec * sampleRate) },
    () => noise * random.normal(),
  );
  for (const { atSec, freqHz, amplitude } of tones) {
    const start = Math.round(atSec * sampleRate);
    for (let i = start; i < samples.length; i++) {
      const t = (i - start) / sampleRate;
      if (t > 2) break;
      for (let h = 1; h <= 8 && h * freqHz < sampleRate / 2; h++)
        samples[i]! +=
          ((amplitude / h) * Math.exp(-t * (2 + h)) * Math.sin(2 * Math.PI * h * freqHz * t)) / 2;
    }
  }
  return samples;
}

/** Noise alone, of so much rms. */
export function noiseOf(rms: number, durationSec: Seconds, sampleRate: number): Float32Array {
  return struckTones([], durationSec, sampleRate, rms);
}
