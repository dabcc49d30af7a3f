/** Filters one sample after the other. */
export type SampleFilter = (sample: number) => number;

/**
 * A second-order low-pass or high-pass with its corner at `cornerHz` (kept under 0.45 of the sample
 * rate) and no resonance: Butterworth, q = 1/√2, by the bilinear formulas of R. Bristow-Johnson's
 * "Cookbook formulae for audio EQ biquad filter coefficients" (from memory).
 */
export function secondOrderFilter(
  kind: 'low-pass' | 'high-pass',
  cornerHz: number,
  sampleRate: number,
): SampleFilter {
  const angle = (2 * Math.PI * Math.min(cornerHz, 0.45 * sampleRate)) / sampleRate;
  const cosine = Math.cos(angle);
  const alpha = Math.sin(angle) / Math.SQRT2;
  const side = (kind === 'low-pass' ? 1 - cosine : 1 + cosine) / 2 / (1 + alpha);
  const middle = kind === 'low-pass' ? 2 * side : -2 * side;
  const back1 = (2 * cosine) / (1 + alpha);
  const back2 = -(1 - alpha) / (1 + alpha);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return (x) => {
    const y = side * x + middle * x1 + side * x2 + back1 * y1 + back2 * y2;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    return y;
  };
}
