import type { Seconds } from '../core/time/ticks.ts';
import { createFilterBank } from './filterBank.ts';
import type { MonoRecording } from './heardRecording.ts';
import {
  ATTACK_FRAMING,
  ONSET_BAND_NAMES,
  ONSET_FRAME_RATE,
  type OnsetBand,
  onsetStrengths,
  RISE_AHEAD_SEC,
} from './onsetBands.ts';
import { LISTENING_RATE_HZ, resample } from './resample.ts';
import { type Framing, frameCount, frameRate, visitFrames } from './spectrogram.ts';

/**
 * What beats and bars are found from, small enough to be kept with a song (about 700 bytes a
 * second), so that a correction need not listen again. Values are 0 to 255.
 */
export type BeatEvidence = {
  /** Frames of `rises` in a second; frame i is at i / `frameRate` seconds. */
  readonly frameRate: number;
  readonly frames: number;
  /** Onset strength by band, one value a frame: the square root of the share of a strong attack. */
  readonly rises: Readonly<Record<OnsetBand, Uint8Array>>;
  /** Frames of `chroma` in a second, from second 0. */
  readonly chromaRate: number;
  /** 24 values a frame: how strongly the pitch classes from C on sound in the bass, then above it. */
  readonly chroma: Uint8Array;
  /** From 0 (nothing sounds) to 1: the largest sample. */
  readonly peak: number;
};

/** Long enough to tell semitones apart from about 90 Hz on; ten frames a second. */
const CHROMA_FRAMING: Framing = {
  windowSamples: 4096,
  hopSamples: 2205,
  sampleRateHz: LISTENING_RATE_HZ,
};

const CHROMA_RANGE = { lowestHz: 50, highestHz: 2100, bandsPerOctave: 24 };

/** Below it pitch classes are the bass's. */
const BASS_TOP_HZ = 220;

/** What is quieter than this at its loudest (−70 dB) is taken for silence. */
const QUIETEST_PEAK = 3e-4;

/** The strong attack that others are measured by: so many hundredths of the frames rise less. */
const STRONG_SHARE = 0.995;

/** Listens to a recording for beats. A silent one gives evidence of nothing: all zeros. */
export function beatEvidence(recording: MonoRecording): BeatEvidence {
  const samples = resample(recording);
  const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  const frames = frameCount(samples.length, ATTACK_FRAMING);
  const silent = peak < QUIETEST_PEAK;
  const loudest = silent ? 1 : loudMagnitude(samples);
  const strengths = silent ? undefined : onsetStrengths(samples, loudest);
  const rises = Object.fromEntries(
    ONSET_BAND_NAMES.map((band) => [
      band,
      strengths ? asShares(strengths[band]) : new Uint8Array(frames),
    ]),
  ) as Record<OnsetBand, Uint8Array>;
  return {
    frameRate: ONSET_FRAME_RATE,
    frames,
    rises,
    chromaRate: frameRate(CHROMA_FRAMING),
    chroma: chromaOf(samples, silent ? 1 : loudest),
    peak: Math.min(1, peak),
  };
}

/** When what a frame of `rises` shows sounds. */
export function riseSec(frame: number, evidence: Pick<BeatEvidence, 'frameRate'>): Seconds {
  return frame / evidence.frameRate + RISE_AHEAD_SEC;
}

/** The root mean square of the loudest tenth of the recording, as a magnitude of a full band. */
function loudMagnitude(samples: Float32Array): number {
  const block = 4410;
  const levels: number[] = [];
  for (let from = 0; from < samples.length; from += block) {
    let energy = 0;
    const end = Math.min(samples.length, from + block);
    for (let i = from; i < end; i++) energy += samples[i]! ** 2;
    levels.push(Math.sqrt(energy / (end - from)));
  }
  levels.sort((a, b) => a - b);
  return Math.max(1e-5, levels[Math.floor(0.9 * (levels.length - 1))]!);
}

function asShares(rises: Float32Array): Uint8Array {
  const sorted = rises.toSorted();
  const strong = sorted[Math.floor(STRONG_SHARE * (sorted.length - 1))]!;
  if (!(strong > 0)) return new Uint8Array(rises.length);
  return Uint8Array.from(rises, (rise) =>
    Math.min(255, Math.round(255 * Math.sqrt(rise / strong / 2))),
  );
}

function chromaOf(samples: Float32Array, loudest: number): Uint8Array {
  const bank = createFilterBank(CHROMA_FRAMING, CHROMA_RANGE);
  const places = Array.from(bank.centresHz, (hz) => {
    const pitchClass = ((Math.round(12 * Math.log2(hz / 440)) % 12) + 21) % 12;
    return hz < BASS_TOP_HZ ? pitchClass : 12 + pitchClass;
  });
  const chroma = new Uint8Array(24 * frameCount(samples.length, CHROMA_FRAMING));
  const bands = new Float32Array(places.length);
  const sums = new Float64Array(24);
  visitFrames(samples, CHROMA_FRAMING, (frame, magnitudes) => {
    bank.apply(magnitudes, bands);
    sums.fill(0);
    for (let b = 0; b < bands.length; b++) sums[places[b]!]! += Math.sqrt(bands[b]! / loudest);
    for (let c = 0; c < 24; c++)
      chroma[24 * frame + c] = Math.min(255, Math.round((c < 12 ? 40 : 12) * sums[c]!));
  });
  return chroma;
}

/** The evidence of a part of the recording; frame 0 of it is at `fromSec`. */
export function evidenceBetween(
  evidence: BeatEvidence,
  fromSec: Seconds,
  toSec: Seconds,
): BeatEvidence {
  const from = Math.round(fromSec * evidence.frameRate);
  const to = Math.min(evidence.frames, Math.round(toSec * evidence.frameRate));
  if (from === 0 && to === evidence.frames) return evidence;
  const chromaFrom = 24 * Math.round(fromSec * evidence.chromaRate);
  const chromaTo = 24 * Math.round(toSec * evidence.chromaRate);
  const rises = Object.fromEntries(
    ONSET_BAND_NAMES.map((band) => [band, evidence.rises[band].subarray(from, to)]),
  ) as Record<OnsetBand, Uint8Array>;
  return {
    ...evidence,
    frames: to - from,
    rises,
    chroma: evidence.chroma.subarray(chromaFrom, chromaTo),
  };
}

/** Nothing may rise for so long while a band plays on, however slow … */
const SILENCE_SEC: Seconds = 2.2;

/** … where a rise is more than this, of 255. */
const FAINTEST_RISE = 8;

/** Where music begins again after a silence, a little before its first attack; without the beginning. */
export function silenceEnds(evidence: BeatEvidence): Seconds[] {
  const { frames, rises } = evidence;
  const ends: Seconds[] = [];
  let quietFrom = 0;
  let hasSounded = false;
  for (let i = 0; i < frames; i++) {
    if (!ONSET_BAND_NAMES.some((band) => rises[band][i]! > FAINTEST_RISE)) continue;
    if (hasSounded && (i - quietFrom) / evidence.frameRate > SILENCE_SEC)
      ends.push((i - 5) / evidence.frameRate);
    hasSounded = true;
    quietFrom = i + 1;
  }
  return ends;
}
