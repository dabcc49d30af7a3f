import type { KeyNumber } from '../core/harmony/pitch.ts';
import type { MonoRecording } from './heardRecording.ts';
import { binsOf, type Framing, frameCount, frameRate, visitFrames } from './spectrogram.ts';

/** Bins to a semitone: a third of one is the least that tells a note from its neighbours' slopes (Mauch and Dixon 2010). */
export const BINS_A_SEMITONE = 3;

/** Keys whose fundamentals and overtones are looked at: 39 Hz to 2.5 kHz. */
export const PITCH_RANGE = { lowest: 27, highest: 99 } as const;

/** Bins of a frame; bin i is the pitch `PITCH_RANGE.lowest` + (i − 1) / `BINS_A_SEMITONE`. */
export const PITCH_BINS = (PITCH_RANGE.highest - PITCH_RANGE.lowest + 1) * BINS_A_SEMITONE;

/**
 * Long enough to tell semitones apart from about 90 Hz up (0.37 s at 22 050 Hz), and to have four to a
 * second without a gap.
 */
const WINDOW_SAMPLES = 8192;
const HOP_SAMPLES = 2048;

/** Between these frequencies peaks tell the tuning: below, bins are too wide; above, overtones are stretched. */
const TUNING_HZ = { lowest: 200, highest: 1400 } as const;

/**
 * A sound by pitch: `frameCount` × `PITCH_BINS` magnitudes, frame after frame, frame i in the middle
 * of i / `frameRate` seconds. `tuningCents` is how much A lies over 440 Hz, −50 to 50; bins are moved by
 * it, so that every key has a bin in its middle.
 */
export type PitchSpectrum = {
  readonly frameRate: number;
  readonly frameCount: number;
  readonly levels: Float32Array;
  readonly tuningCents: number;
};

/** The key number, with fraction, of a frequency. */
function pitchOf(hz: number): number {
  return 69 + 12 * Math.log2(hz / 440);
}

function hzOf(pitch: KeyNumber): number {
  return 440 * 2 ** ((pitch - 69) / 12);
}

/** The sound by pitch. Silence gives zeros and a tuning of 0. */
export function pitchSpectrum({ samples, sampleRateHz }: MonoRecording): PitchSpectrum {
  const framing: Framing = {
    windowSamples: WINDOW_SAMPLES,
    hopSamples: HOP_SAMPLES,
    sampleRateHz,
  };
  const { binHz } = binsOf(framing);
  const frames = frameCount(samples.length, framing);
  // One bin more at each end, so that the tuning can move all of them.
  const wide = PITCH_BINS + 2;
  const centres = Float64Array.from(
    { length: wide },
    (_, i) => hzOf(PITCH_RANGE.lowest + (i - 2) / BINS_A_SEMITONE) / binHz,
  );
  const raw = new Float32Array(frames * wide);
  const tuning = { cos: 0, sin: 0 };
  visitFrames(samples, framing, (frame, magnitudes) => {
    addTuning(tuning, magnitudes, binHz);
    const row = raw.subarray(frame * wide, (frame + 1) * wide);
    for (let i = 0; i < wide; i++) row[i] = levelAt(magnitudes, centres[i]!);
  });
  const semitones = Math.atan2(tuning.sin, tuning.cos) / (2 * Math.PI);
  return {
    frameRate: frameRate(framing),
    frameCount: frames,
    levels: shifted(raw, frames, semitones * BINS_A_SEMITONE),
    tuningCents: 100 * semitones,
  };
}

/**
 * The magnitude at a place between two bins; where a third of a semitone is wider than a bin, the mean
 * over it.
 */
function levelAt(magnitudes: Float32Array, centre: number): number {
  const half = (centre * 0.0193) / 2;
  if (half < 1) {
    const whole = Math.floor(centre);
    const rest = centre - whole;
    return (1 - rest) * (magnitudes[whole] ?? 0) + rest * (magnitudes[whole + 1] ?? 0);
  }
  let sum = 0;
  let weights = 0;
  for (let k = Math.ceil(centre - 2 * half); k <= centre + 2 * half; k++) {
    const weight = 1 - Math.abs(k - centre) / (2 * half);
    sum += weight * (magnitudes[k] ?? 0);
    weights += weight;
  }
  return sum / weights;
}

/** Adds a frame's peaks to the tuning, as points on a circle that is a semitone round. */
function addTuning(
  tuning: { cos: number; sin: number },
  magnitudes: Float32Array,
  binHz: number,
): void {
  const last = Math.min(magnitudes.length - 2, Math.floor(TUNING_HZ.highest / binHz));
  for (let k = Math.ceil(TUNING_HZ.lowest / binHz); k <= last; k++) {
    const [left, middle, right] = [magnitudes[k - 1]!, magnitudes[k]!, magnitudes[k + 1]!];
    if (middle <= left || middle < right || left === 0 || right === 0) continue;
    const [a, b, c] = [Math.log(left), Math.log(middle), Math.log(right)];
    const place = k + (0.5 * (a - c)) / (a - 2 * b + c);
    const angle = 2 * Math.PI * pitchOf(place * binHz);
    tuning.cos += middle * Math.cos(angle);
    tuning.sin += middle * Math.sin(angle);
  }
}

/** Every frame moved down by so many bins (at most 1.5), its first and last bin left out. */
function shifted(raw: Float32Array, frames: number, bins: number): Float32Array {
  const wide = PITCH_BINS + 2;
  const out = new Float32Array(frames * PITCH_BINS);
  for (let frame = 0; frame < frames; frame++)
    for (let i = 0; i < PITCH_BINS; i++) {
      const at = Math.min(wide - 1.001, Math.max(0, i + 1 + bins));
      const whole = Math.floor(at);
      const rest = at - whole;
      const from = frame * wide + whole;
      out[frame * PITCH_BINS + i] = (1 - rest) * raw[from]! + rest * raw[from + 1]!;
    }
  return out;
}
