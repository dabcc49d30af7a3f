/** Half the length of the interpolating filter, in samples. */
const REACH = 16;

/** Points that are looked at between two samples (ITU-R BS.1770 asks for four times the rate at 48 kHz; from memory). */
const OVERSAMPLING = 4;

/** A quarter, half and three quarters of a sample on: a sinc under a Hann window, each of sum 1. */
const FILTERS = Array.from({ length: OVERSAMPLING - 1 }, (_, i) => {
  const shift = (i + 1) / OVERSAMPLING;
  const taps = Array.from({ length: 2 * REACH }, (_unused, k) => {
    const x = k - REACH + 1 - shift;
    const window = 0.5 + 0.5 * Math.cos((Math.PI * x) / (REACH + 1));
    return (Math.sin(Math.PI * x) / (Math.PI * x)) * window;
  });
  const sum = taps.reduce((total, tap) => total + tap, 0);
  return taps.map((tap) => tap / sum);
});

/**
 * The highest level of the wave that samples stand for, between them too. Looked at only around
 * samples over `floor`; where none is, the highest sample.
 */
export function truePeak(samples: Float32Array, floor = 0.5): number {
  let peak = 0;
  for (let i = 0; i < samples.length; i++) {
    const size = Math.abs(samples[i]!);
    peak = Math.max(peak, size);
    if (size < floor || i < REACH || i > samples.length - REACH - 1) continue;
    for (const taps of FILTERS) {
      let sum = 0;
      for (let k = 0; k < taps.length; k++) sum += taps[k]! * samples[i - REACH + 1 + k]!;
      peak = Math.max(peak, Math.abs(sum));
    }
  }
  return peak;
}
