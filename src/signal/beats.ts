import type { Seconds } from '../core/time/ticks.ts';
import { combinedRise } from './beatActivation.ts';
import { type BeatCorrection, type Stretch, stretchesOf } from './beatCorrections.ts';
import { type BeatEvidence, beatEvidence, evidenceBetween, riseSec } from './beatEvidence.ts';
import { correctedReading, readBeats, tempoReadings } from './beatReading.ts';
import type { MonoRecording, RecordedBeat, TempoReading } from './heardRecording.ts';
import { steadied } from './steadyBeats.ts';

/** The beats of a recording: all 0 and empty where none were heard. */
export type RecordedBeats = {
  /** The mean tempo, in beats a minute, pauses aside. */
  readonly tempoBpm: number;
  /** The likeliest tempi, at most three, the one that the beats keep to first; weights sum to 1. */
  readonly tempi: readonly TempoReading[];
  readonly beats: readonly RecordedBeat[];
  /** Beats in most bars. */
  readonly beatsPerBar: number;
};

const NO_BEATS: RecordedBeats = { tempoBpm: 0, tempi: [], beats: [], beatsPerBar: 0 };

/** Beats, bars and tempi of a recording: `beatsFrom` of its `beatEvidence`. */
export function findBeats(
  recording: MonoRecording,
  corrections: readonly BeatCorrection[] = [],
): RecordedBeats {
  return beatsFrom(beatEvidence(recording), corrections);
}

/**
 * Beats, bars and tempi from what was kept of a recording and what the player put right, without
 * listening again. Corrections are taken in order; each holds in the stretch between two "anew" that
 * it lies in, and the rest of the stretch is fitted to it. Nothing is found where too little attacks:
 * fewer than six beats, or nothing louder than silence.
 */
export function beatsFrom(
  evidence: BeatEvidence,
  corrections: readonly BeatCorrection[] = [],
): RecordedBeats {
  const parts = stretchesOf(corrections, evidence.frames / evidence.frameRate).map((stretch) =>
    beatsOfStretch(evidence, stretch),
  );
  const longest = parts.toSorted((a, b) => b.beats.length - a.beats.length)[0] ?? NO_BEATS;
  return { ...longest, beats: parts.flatMap(({ beats }) => beats) };
}

function beatsOfStretch(evidence: BeatEvidence, stretch: Stretch): RecordedBeats {
  const { fromSec, toSec, corrections } = stretch;
  const here = evidenceBetween(evidence, fromSec, toSec);
  const readings = readBeats(here, combinedRise(here), corrections);
  const reading = correctedReading(readings, here, corrections);
  if (!reading) return NO_BEATS;
  const secs = steadied(
    reading.beats.map((frame) => fromSec + riseSec(frame, here)),
    corrections.length === 0,
  );
  const tempoBpm = meanTempo(secs);
  const beats = secs
    .map((sec, k) => ({ sec, positionInBar: positionOf(k, reading.barLength, reading.phase) }))
    .filter(({ sec }) => sec >= Math.max(0, fromSec - 0.05) && sec < toSec);
  return {
    tempoBpm,
    tempi: tempoReadings(readings, reading, here, tempoBpm),
    beats,
    beatsPerBar: reading.barLength,
  };
}

function positionOf(beat: number, length: number, phase: number): number {
  return (((beat - phase) % length) + length) % length;
}

/** Intervals further than this from the median are slips or pauses, not the tempo. */
const NEAR_MEDIAN = 0.12;

/** Beats a minute by the mean of the intervals that lie near their median. */
function meanTempo(secs: readonly Seconds[]): number {
  const intervals = secs.slice(1).map((sec, i) => sec - secs[i]!);
  const median = intervals.toSorted((a, b) => a - b)[intervals.length >> 1]!;
  const near = intervals.filter((interval) => Math.abs(interval / median - 1) < NEAR_MEDIAN);
  return (60 * near.length) / near.reduce((sum, interval) => sum + interval, 0);
}
