import { STRUCK_BANDS, type StruckFrames } from './struckBands.ts';

/** Bands that are listened to together for an attack of any kind: deep, body, middle, sharp, high. */
const GROUPS = [
  [0, 3],
  [3, 6],
  [6, 10],
  [10, 13],
  [13, 16],
] as const;

/** The strong rise that others are measured by: so many of the frames rise less. */
const STRONG_SHARE = 0.97;

/** A rise that is less than this share of a strong one in every group is no attack. */
const LEAST_SHARE = 0.06;

/** What rises less than this (1 = natural log unit) is never strong, so that silence stays silent. */
const LEAST_STRONG = 0.02;

/** An attack is the highest for so long before and after. */
const APART_SEC = 0.025;

/** The value that a share of the values lies under; 0 of none. */
export function quantile(values: ArrayLike<number>, share: number): number {
  const sorted = Float32Array.from(values).toSorted();
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}

/** The value of one band in each frame. */
export function bandCourse(
  values: Float32Array,
  band: number,
  { frameCount }: StruckFrames,
): Float32Array {
  return Float32Array.from({ length: frameCount }, (_, f) => values[f * STRUCK_BANDS + band]!);
}

/**
 * How much each frame attacks: of each group of bands its mean rise as a share of a strong rise of
 * that group in this recording, at most 1, summed over the groups.
 */
export function strikeStrength(frames: StruckFrames): Float32Array {
  const total = new Float32Array(frames.frameCount);
  for (const [from, to] of GROUPS) {
    const rise = Float32Array.from({ length: frames.frameCount }, (_, f) => {
      let sum = 0;
      for (let b = from; b < to; b++) sum += frames.rises[f * STRUCK_BANDS + b]!;
      return sum / (to - from);
    });
    const strong = Math.max(LEAST_STRONG, quantile(rise, STRONG_SHARE));
    for (let f = 0; f < total.length; f++) total[f]! += Math.min(1, rise[f]! / strong);
  }
  return total;
}

/** The frames in which something is struck, ascending: local peaks of `strikeStrength`, weak ones too. */
export function strikeFrames(frames: StruckFrames): number[] {
  const strength = strikeStrength(frames);
  const reach = Math.round(APART_SEC * frames.frameRate);
  const attacks: number[] = [];
  for (let f = 1; f < strength.length; f++) {
    if (strength[f]! < LEAST_SHARE) continue;
    let highest = true;
    for (let d = 1; d <= reach && highest; d++)
      highest = strength[f]! > (strength[f - d] ?? 0) && strength[f]! >= (strength[f + d] ?? 0);
    if (highest) attacks.push(f);
  }
  return attacks;
}
