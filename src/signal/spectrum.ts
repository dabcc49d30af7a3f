import FFT from 'fft.js';

/** The part of the Fourier transform that is used here; the package itself is loosely typed. */
type RealTransform = { realTransform(out: Float64Array, samples: Float64Array): void };

/** How many samples a transform takes that has room for `frameSamples`: a power of two. */
export function transformSize(frameSamples: number): number {
  return 2 ** Math.ceil(Math.log2(frameSamples));
}

/**
 * Makes a function that gives the magnitudes of the spectrum of `frameSamples` samples from place
 * `from` of an array on, seen through a Hann window: `transformSize` / 2 + 1 values, bin k at
 * k × sampleRate / `transformSize` Hz. A sine of amplitude 1 in the middle of a bin gives 1 there.
 * The array that is returned is used again at the next call.
 */
export function createSpectrum(
  frameSamples: number,
): (samples: Float32Array, from?: number) => Float32Array {
  const size = transformSize(frameSamples);
  const transform = new FFT(size) as unknown as RealTransform;
  const window = Float64Array.from(
    { length: frameSamples },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / frameSamples),
  );
  const frame = new Float64Array(size);
  const bins = new Float64Array(2 * size);
  const magnitudes = new Float32Array(size / 2 + 1);
  // The window halves what a sine sums up to, half of which is at negative frequencies.
  const scale = 4 / frameSamples;
  return (samples, from = 0) => {
    for (let i = 0; i < frameSamples; i++) frame[i] = samples[from + i]! * window[i]!;
    transform.realTransform(bins, frame);
    for (let k = 0; k < magnitudes.length; k++)
      magnitudes[k] = scale * Math.sqrt(bins[2 * k]! ** 2 + bins[2 * k + 1]! ** 2);
    return magnitudes;
  };
}
