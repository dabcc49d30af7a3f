import type { FilterBank } from './filterBank.ts';
import { createFilterBank, QUARTER_TONES } from './filterBank.ts';
import { LISTENING_RATE_HZ } from './resample.ts';
import { type Framing, frameCount, frameRate, visitFrames } from './spectrogram.ts';

/** 46 ms seen every 10 ms: short enough for attacks, long enough to tell a kick from a bass note's next partial. */
export const ATTACK_FRAMING: Framing = {
  windowSamples: 1024,
  hopSamples: 220,
  sampleRateHz: LISTENING_RATE_HZ,
};

/**
 * What is rising is heard so long after the frame that rises most. Exact clicks and tones rise most
 * about 16 ms before they begin, since frames look ahead; sampled drums and instruments, which are slow
 * to speak, about 8 ms after (the medians). This lies between.
 */
export const RISE_AHEAD_SEC = 0.004;

/**
 * Where attacks are looked for: the body of kick and bass, the body of snare and of low chords,
 * the middle of voices and chords, what is struck sharply, and cymbals.
 */
export const ONSET_BANDS = {
  low: { fromHz: 30, toHz: 120 },
  body: { fromHz: 120, toHz: 420 },
  middle: { fromHz: 420, toHz: 2000 },
  sharp: { fromHz: 2000, toHz: 6500 },
  high: { fromHz: 6500, toHz: 11000 },
} as const;

export type OnsetBand = keyof typeof ONSET_BANDS;

export const ONSET_BAND_NAMES = Object.keys(ONSET_BANDS) as OnsetBand[];

/** The rise of level in each band, one value ≥ 0 a frame of `ATTACK_FRAMING`. */
export type OnsetStrengths = Readonly<Record<OnsetBand, Float32Array>>;

/** A frame is compared with the one so many frames before (Böck and Widmer 2013). */
const LAG_FRAMES = 2;

/** The logarithm bends at 1/200 of `loudest`: soft strokes rise nearly as much as loud ones (30 to 2000 tried). */
const COMPRESSION = 200;

/**
 * Onset strength by bands (SuperFlux: Böck and Widmer, "Maximum Filter Vibrato Suppression for
 * Onset Detection", DAFx 2013): levels in quarter-tone bands, each compared with the highest of
 * itself and its neighbours two frames before, so that vibrato and glides count for nothing; the
 * rises are averaged over each onset band. `loudest` is a magnitude near the top of the recording.
 */
export function onsetStrengths(samples: Float32Array, loudest: number): OnsetStrengths {
  const bank = createFilterBank(ATTACK_FRAMING, QUARTER_TONES);
  const frames = frameCount(samples.length, ATTACK_FRAMING);
  const groups = ONSET_BAND_NAMES.map((name) => groupOf(bank, name));
  const rises = groups.map(() => new Float32Array(frames));
  const recent = Array.from(
    { length: LAG_FRAMES + 1 },
    () => new Float32Array(bank.centresHz.length),
  );
  const scale = COMPRESSION / loudest;
  visitFrames(samples, ATTACK_FRAMING, (frame, magnitudes) => {
    const now = recent[frame % recent.length]!;
    const then = recent[(frame + 1) % recent.length]!;
    bank.apply(magnitudes, now);
    for (let b = 0; b < now.length; b++) now[b] = Math.log1p(scale * now[b]!);
    for (let g = 0; g < groups.length; g++)
      rises[g]![frame] = frame < LAG_FRAMES ? 0 : meanRise(now, then, groups[g]!);
  });
  return Object.fromEntries(ONSET_BAND_NAMES.map((name, g) => [name, rises[g]!])) as OnsetStrengths;
}

type Group = { readonly from: number; readonly to: number };

function groupOf({ centresHz }: FilterBank, name: OnsetBand): Group {
  const { fromHz, toHz } = ONSET_BANDS[name];
  const from = centresHz.findIndex((hz) => hz >= fromHz);
  const to = centresHz.findIndex((hz) => hz >= toHz);
  return { from, to: to < 0 ? centresHz.length : to };
}

function meanRise(now: Float32Array, then: Float32Array, { from, to }: Group): number {
  let sum = 0;
  for (let b = from; b < to; b++) {
    const before = Math.max(then[b]!, then[b - 1] ?? 0, then[b + 1] ?? 0);
    if (now[b]! > before) sum += now[b]! - before;
  }
  return sum / (to - from);
}

export const ONSET_FRAME_RATE = frameRate(ATTACK_FRAMING);
