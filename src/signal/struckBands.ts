import { type BandFrames, bandFrames } from './filterBank.ts';
import { loudAmplitude } from './loudness.ts';
import { ATTACK_FRAMING } from './onsetBands.ts';

/**
 * Where what is struck is told apart, in hertz: about half an octave each, from the body of a kick to
 * the shimmer of cymbals. Each band reaches to the next one.
 */
const EDGES_HZ = [
  30, 60, 90, 130, 190, 280, 400, 600, 850, 1200, 1700, 2400, 3400, 4800, 6600, 8600, 11000,
] as const;

export const STRUCK_BANDS = EDGES_HZ.length - 1;

/** A frame is compared with the one so many frames before (Böck and Widmer 2013: the window's reach). */
const LAG_FRAMES = 2;

/**
 * A sound in `STRUCK_BANDS` bands, frame after frame: the mean level of each band, and how much it
 * rises (SuperFlux: Böck and Widmer, DAFx 2013), 0 or more, both in the logarithmic unit of the levels
 * they come from.
 */
export type StruckFrames = {
  readonly frameRate: number;
  readonly frameCount: number;
  readonly levels: Float32Array;
  readonly rises: Float32Array;
};

/** Levels are linear far below this share of the loud parts (−56 dB for all bands together). */
const GAIN_OVER_LOUD = 60;

/** Quarter-tone levels of a sound at `LISTENING_RATE_HZ`, measured by its loud parts; silence is all zeros. */
export function struckBandFrames(samples: Float32Array): BandFrames {
  const loud = loudAmplitude(samples);
  return bandFrames(samples, ATTACK_FRAMING, {
    gain: loud === undefined ? 0 : GAIN_OVER_LOUD / loud,
  });
}

/** See `StruckFrames`; from quarter-tone bands of `ATTACK_FRAMING`. */
export function struckFrames({
  frameRate,
  frameCount,
  bandCount,
  centresHz,
  levels,
}: BandFrames): StruckFrames {
  const own = Uint8Array.from(centresHz, (hz) =>
    Math.min(
      STRUCK_BANDS - 1,
      EDGES_HZ.findLastIndex((edge) => hz >= edge),
    ),
  );
  const shares = Float32Array.from({ length: STRUCK_BANDS }, (_, band) => {
    const members = own.reduce((sum, o) => sum + (o === band ? 1 : 0), 0);
    return members === 0 ? 0 : 1 / members;
  });
  const out = {
    levels: new Float32Array(frameCount * STRUCK_BANDS),
    rises: new Float32Array(frameCount * STRUCK_BANDS),
  };
  for (let frame = 0; frame < frameCount; frame++) {
    const at = frame * bandCount;
    const before = Math.max(0, frame - LAG_FRAMES) * bandCount;
    const to = frame * STRUCK_BANDS;
    for (let b = 0; b < bandCount; b++) {
      const band = own[b]!;
      const level = levels[at + b]!;
      const highest = Math.max(
        levels[before + b]!,
        b > 0 ? levels[before + b - 1]! : 0,
        b + 1 < bandCount ? levels[before + b + 1]! : 0,
      );
      out.levels[to + band]! += level * shares[band]!;
      if (level > highest) out.rises[to + band]! += (level - highest) * shares[band]!;
    }
  }
  return { frameRate, frameCount, ...out };
}
