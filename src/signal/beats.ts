import type { Seconds } from '../core/time/ticks.ts';
import { findAttacks } from './attacks.ts';
import { combinedRise } from './beatActivation.ts';
import { beatConfidence } from './beatConfidence.ts';
import { type BeatCorrection, type Stretch, stretchesOf } from './beatCorrections.ts';
import {
  type BeatEvidence,
  beatEvidence,
  evidenceBetween,
  riseSec,
  silenceEnds,
} from './beatEvidence.ts';
import { readBeats } from './beatReading.ts';
import { correctedReading } from './correctedReading.ts';
import type { MonoRecording, RecordedBeat, TempoReading } from './heardRecording.ts';
import { steadied } from './steadyBeats.ts';
import { tempoReadings } from './tempo.ts';

/** The beats of a recording: all 0 and empty where none were heard. */
export type RecordedBeats = {
  /** The mean tempo, in beats a minute, pauses aside. */
  readonly tempoBpm: number;
  /** The likeliest tempi, at most three, the one that the beats keep to first; weights sum to 1. */
  readonly tempi: readonly TempoReading[];
  readonly beats: readonly RecordedBeat[];
  /** Beats in most bars. */
  readonly beatsPerBar: number;
  /** How sure it is that music is played in time here, 0 to 1: see `beatConfidence`. */
  readonly confidence: number;
};

const NO_BEATS: RecordedBeats = {
  tempoBpm: 0,
  tempi: [],
  beats: [],
  beatsPerBar: 0,
  confidence: 0,
};

/** Beats, bars and tempi of a recording: `beatsFrom` of its `beatEvidence`. */
export function findBeats(
  recording: MonoRecording,
  corrections: readonly BeatCorrection[] = [],
): RecordedBeats {
  return beatsFrom(beatEvidence(recording), corrections);
}

/**
 * Beats, bars and tempi from what was kept of a recording and what the player put right, without
 * listening again. Corrections are taken in order; each holds in the stretch between two "anew" or
 * silences that it lies in, and the rest of the stretch is fitted to it; after a silence the band is
 * taken to go on at its tempo. Nothing is found where too little attacks:
 * fewer than six beats, or nothing louder than silence.
 */
export function beatsFrom(
  evidence: BeatEvidence,
  corrections: readonly BeatCorrection[] = [],
): RecordedBeats {
  const afterSilence = silenceEnds(evidence).map((atSec) => ({ kind: 'silence', atSec }) as const);
  const stretches = stretchesOf(
    [...corrections, ...afterSilence],
    evidence.frames / evidence.frameRate,
  );
  const parts: RecordedBeats[] = [];
  for (const stretch of stretches) {
    const before = parts.findLast(({ beats }) => beats.length > 0)?.tempoBpm;
    parts.push(beatsOfStretch(evidence, stretch, before));
  }
  const longest = parts.toSorted((a, b) => b.beats.length - a.beats.length)[0] ?? NO_BEATS;
  return { ...longest, beats: parts.flatMap(({ beats }) => beats) };
}

function beatsOfStretch(
  evidence: BeatEvidence,
  stretch: Stretch,
  tempoBefore: number | undefined,
): RecordedBeats {
  const { fromSec, toSec, corrections } = stretch;
  const here = evidenceBetween(evidence, fromSec, toSec);
  const combined = combinedRise(here);
  const readings = readBeats(
    here,
    combined,
    corrections,
    stretch.follows === 'silence' ? tempoBefore : undefined,
  );
  const reading = correctedReading(readings, here, corrections);
  if (!reading) return NO_BEATS;
  const found = steadied(
    reading.beats.map((frame) => fromSec + riseSec(frame, here)),
    corrections.every(({ kind }) => kind !== 'moved-beat' && kind !== 'taps'),
  );
  const secs = dragged(found, corrections, fromSec);
  const attacks = findAttacks(here).map((attack) => ({ ...attack, sec: fromSec + attack.sec }));
  const confidence = beatConfidence(secs, attacks);
  if (
    confidence === 0 &&
    corrections.length === 0 &&
    contrast(reading.beats, combined) < LEAST_CONTRAST
  )
    return NO_BEATS;
  const tempoBpm = meanTempo(secs);
  const beats = secs
    .map((sec, k) => ({ sec, positionInBar: positionOf(k, reading.barLength, reading.phase) }))
    .filter(({ sec }) => sec >= Math.max(0, fromSec - 0.05) && sec < toSec);
  return {
    tempoBpm,
    tempi: tempoReadings(readings, reading, here.frameRate, tempoBpm),
    beats,
    beatsPerBar: reading.barLength,
    confidence,
  };
}

/** The beat nearest to where one was dragged is there exactly. */
function dragged(
  secs: readonly Seconds[],
  corrections: readonly BeatCorrection[],
  fromSec: Seconds,
): readonly Seconds[] {
  return corrections.reduce((beats, correction) => {
    if (correction.kind !== 'moved-beat') return beats;
    const to = fromSec + correction.toSec;
    const distances = beats.map((sec) => Math.abs(sec - to));
    return beats.with(distances.indexOf(Math.min(...distances)), to);
  }, secs);
}

/** Beats that rise less over the mean than this, with attacks at random, are those of noise (white noise gives 1.6). */
const LEAST_CONTRAST = 2;

/** How many times the mean of all frames the combined rise is at the beats. */
function contrast(beats: readonly number[], combined: Float32Array): number {
  const mean = combined.reduce((sum, value) => sum + value, 0) / combined.length;
  const most = beats.map((beat) => {
    const from = Math.max(0, Math.round(beat) - 3);
    return combined.subarray(from, from + 7).reduce((a, b) => Math.max(a, b), 0);
  });
  return most.reduce((sum, value) => sum + value, 0) / most.length / mean;
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
