import type { Seconds } from '../core/time/ticks.ts';
import type { BandFrames } from './filterBank.ts';
import { RISE_AHEAD_SEC } from './onsetBands.ts';
import { bandCourse, quantile, strikeFrames } from './strikes.ts';
import { STRUCK_BANDS, type StruckFrames, struckFrames } from './struckBands.ts';

/** An attack with what it looks like: five numbers for each band, see `lookOf`. */
export type Strike = { readonly sec: Seconds; readonly look: Float32Array };

/** What is taken as the measure of a band: the rise that 2 in 100 frames exceed, the level that 1 in 10 does. */
type BandScale = { readonly rise: number; readonly level: number };

const STRONG_RISES = 0.98;
const LOUD_LEVELS = 0.9;

/** A strong rise is never taken for less than this, in the levels' logarithmic unit. */
const LEAST_STRONG = 0.05;

/** A rise counts for at most so many strong ones. */
const MOST_STRONG = 2;

/** Frames before the attack that show what sounded already, and after it that show how it dies away. */
const BEFORE = 3;
const AFTER = 8;

/** Whatever is struck, plucked or sung anew, ascending, with its look; `bands`: see `struckBandFrames`. */
export function strikesIn(bands: BandFrames): Strike[] {
  const frames = struckFrames(bands);
  const scales = Array.from({ length: STRUCK_BANDS }, (_, band) => ({
    rise: Math.max(LEAST_STRONG, quantile(bandCourse(frames.rises, band, frames), STRONG_RISES)),
    level: quantile(bandCourse(frames.levels, band, frames), LOUD_LEVELS),
  }));
  return strikeFrames(frames).map((frame) => ({
    sec: frame / frames.frameRate + RISE_AHEAD_SEC,
    look: lookOf(frame, frames, scales),
  }));
}

/**
 * What each band does at an attack, by kind and then by band: how much it rises; the same as a share
 * of a strong rise of that band in this recording; its level after the attack, measured by the band's
 * loud level; how much it has fallen 60 ms later; its level before.
 */
function lookOf(
  frame: number,
  { levels, rises, frameCount }: StruckFrames,
  scales: readonly BandScale[],
): Float32Array {
  const look = new Float32Array(5 * STRUCK_BANDS);
  const at = (values: Float32Array, f: number, band: number) =>
    values[Math.min(frameCount - 1, Math.max(0, f)) * STRUCK_BANDS + band]!;
  for (let band = 0; band < STRUCK_BANDS; band++) {
    const { rise, level } = scales[band]!;
    let risen = 0;
    for (let f = frame - 1; f <= frame + 2; f++) risen = Math.max(risen, at(rises, f, band));
    const after = Math.max(at(levels, frame + 1, band), at(levels, frame + 2, band));
    look[band] = risen;
    look[STRUCK_BANDS + band] = Math.min(MOST_STRONG, risen / rise);
    look[2 * STRUCK_BANDS + band] = after - level;
    look[3 * STRUCK_BANDS + band] = after - at(levels, frame + AFTER, band);
    look[4 * STRUCK_BANDS + band] = at(levels, frame - BEFORE, band) - level;
  }
  return look;
}
