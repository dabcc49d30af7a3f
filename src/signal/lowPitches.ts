import { loudAmplitude } from './loudness.ts';
import { LISTENING_RATE_HZ } from './resample.ts';
import { binsOf, type Framing, frameCount, frameRate, visitFrames } from './spectrogram.ts';

/** Only every fourth sample is needed below 2.7 kHz. */
const DECIMATION = 4;

/** 186 ms seen every 20 ms, with room for bins 2.7 Hz apart: semitones stand apart from the third partial of a low E on. */
const PITCH_FRAMING: Framing = {
  windowSamples: 1024,
  hopSamples: 110,
  sampleRateHz: LISTENING_RATE_HZ / DECIMATION,
};

/** The lowest key that has a place (the C below a four-string bass) and the highest partial's. */
export const LOWEST_PLACE_KEY = 22;
export const HIGHEST_PLACE_KEY = 95;

/** Places for each semitone, the middle one in tune. */
const PLACES_PER_KEY = 3;

const PLACES = (HIGHEST_PLACE_KEY - LOWEST_PLACE_KEY + 1) * PLACES_PER_KEY;

/**
 * The levels of low pitches: `places` values a frame, three for each key from `LOWEST_PLACE_KEY` on;
 * frame i is centred on i / `frameRate` seconds. Natural log of 1 + magnitude × gain.
 */
export type LowPitches = {
  readonly frameRate: number;
  readonly frameCount: number;
  readonly places: number;
  readonly levels: Float32Array;
};

/** Levels are linear far below this share of the loud parts of a recording. */
const GAIN_OVER_LOUD = 60;

/** What the bass and its partials are found from; `samples` at `LISTENING_RATE_HZ`. Silence is all zeros. */
export function lowPitches(samples: Float32Array): LowPitches {
  const loud = loudAmplitude(samples);
  const gain = loud === undefined ? 0 : GAIN_OVER_LOUD / loud;
  const low = decimated(samples);
  const framing = PITCH_FRAMING;
  const frames = frameCount(low.length, framing);
  const { binHz, binCount } = binsOf(framing);
  const centres = Float64Array.from(
    { length: PLACES },
    (_, i) => (440 / binHz) * 2 ** ((LOWEST_PLACE_KEY - 69 + (i - 1) / PLACES_PER_KEY) / 12),
  );
  const levels = new Float32Array(frames * PLACES);
  visitFrames(low, framing, (frame, magnitudes) => {
    for (let i = 0; i < PLACES; i++) {
      const bin = Math.floor(centres[i]!);
      const part = centres[i]! - bin;
      const magnitude =
        bin + 1 < binCount ? magnitudes[bin]! * (1 - part) + magnitudes[bin + 1]! * part : 0;
      levels[frame * PLACES + i] = Math.log1p(gain * magnitude);
    }
  });
  return { frameRate: frameRate(framing), frameCount: frames, places: PLACES, levels };
}

/** Taps on either side of the middle of the filter before decimation. */
const REACH = 24;

/** Every fourth sample behind a windowed sinc (Hann) that passes to 2.2 kHz. */
function decimated(samples: Float32Array): Float32Array {
  const cutoff = 0.85 / DECIMATION;
  const raw = Float64Array.from({ length: 2 * REACH + 1 }, (_, i) => {
    const x = i - REACH;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * cutoff * x) / (Math.PI * cutoff * x);
    return sinc * (0.5 + 0.5 * Math.cos((Math.PI * x) / (REACH + 1)));
  });
  const sum = raw.reduce((a, b) => a + b, 0);
  const taps = raw.map((tap) => tap / sum);
  return Float32Array.from({ length: Math.ceil(samples.length / DECIMATION) }, (_, n) => {
    let value = 0;
    const middle = n * DECIMATION;
    for (let i = 0; i < taps.length; i++) {
      const at = middle + i - REACH;
      if (at >= 0 && at < samples.length) value += taps[i]! * samples[at]!;
    }
    return value;
  });
}

/** The level of a key's pitch, wherever in its semitone it is strongest; 0 outside. */
export function levelOfKey(
  { levels, places, frameCount: frames }: LowPitches,
  frame: number,
  key: number,
): number {
  const first = Math.round((key - LOWEST_PLACE_KEY) * PLACES_PER_KEY);
  if (first < 0 || first + PLACES_PER_KEY > places || frame < 0 || frame >= frames) return 0;
  const at = frame * places + first;
  return Math.max(levels[at]!, levels[at + 1]!, levels[at + 2]!);
}
