import type { Seconds } from '../core/time/ticks.ts';
import { createSpectrum, transformSize } from './spectrum.ts';

/** How a sound is cut into frames: each `windowSamples` long, a new one every `hopSamples`. */
export type Framing = {
  readonly windowSamples: number;
  readonly hopSamples: number;
  readonly sampleRateHz: number;
};

/** Frames of a sound: frame i is centred on sample i × hop; the last one lies before the end. */
export function frameCount(
  sampleCount: number,
  { hopSamples }: Pick<Framing, 'hopSamples'>,
): number {
  return Math.ceil(sampleCount / hopSamples);
}

export function frameRate({ hopSamples, sampleRateHz }: Framing): number {
  return sampleRateHz / hopSamples;
}

/** The middle of a frame, in seconds from the first sample. */
export function frameSec(frame: number, framing: Framing): Seconds {
  return (frame * framing.hopSamples) / framing.sampleRateHz;
}

/** Hertz from one bin to the next, and how many bins a frame has. */
export function binsOf({ windowSamples, sampleRateHz }: Framing): {
  readonly binHz: number;
  readonly binCount: number;
} {
  const size = transformSize(windowSamples);
  return { binHz: sampleRateHz / size, binCount: size / 2 + 1 };
}

/**
 * Gives one frame after another to `visit`: its number and its magnitudes through a Hann window
 * (see `createSpectrum`), in an array that is used again for the next. What lies before the first
 * and after the last sample is silence. Memory does not grow with the sound.
 */
export function visitFrames(
  samples: Float32Array,
  framing: Framing,
  visit: (frame: number, magnitudes: Float32Array) => void,
): void {
  const { windowSamples, hopSamples } = framing;
  const spectrum = createSpectrum(windowSamples);
  const half = windowSamples >> 1;
  const edge = new Float32Array(windowSamples);
  const count = frameCount(samples.length, framing);
  for (let frame = 0; frame < count; frame++) {
    const from = frame * hopSamples - half;
    if (from >= 0 && from + windowSamples <= samples.length) {
      visit(frame, spectrum(samples, from));
    } else {
      edge.fill(0);
      const first = Math.max(0, from);
      edge.set(samples.subarray(first, from + windowSamples), first - from);
      visit(frame, spectrum(edge));
    }
  }
}
