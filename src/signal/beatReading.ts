import { unreachable } from '../core/result.ts';
import { BAR_LENGTHS, barFeatures, beatSights } from './barFit.ts';
import { beatProbability } from './beatActivation.ts';
import type { BeatCorrection } from './beatCorrections.ts';
import { type BeatEvidence, riseSec } from './beatEvidence.ts';
import { beatFeatures, type FitGround, fitGround } from './beatFit.ts';
import { AS_FOUND, BEAT_LEVELS, type BeatLevel, beatsAtLevel, OFF_BEATS } from './beatLevels.ts';
import { beatIntervals, beatPath } from './beatPath.ts';
import { BAR_WEIGHTS, BEAT_WEIGHTS } from './beatWeights.ts';
import type { TempoReading } from './heardRecording.ts';
import { steadyRow } from './steadyBeats.ts';

/** Beats that may be the ones that players count, and the bars over them that fit best. */
export type BeatReading = {
  /** Frames of the rises, not whole. */
  readonly beats: readonly number[];
  readonly barLength: number;
  /** The place in `beats` of the first downbeat. */
  readonly phase: number;
  /** How well beats and bars fit, in nats against other readings. */
  readonly fit: number;
};

/** A row of beats that is judged, and how it came about: what `weights` see of it. */
type Candidate = { readonly beats: readonly number[]; readonly origin: readonly number[] };

/** Slowest and fastest row of beats that is a reading. */
const SLOWEST_BPM = 42;
const FASTEST_BPM = 235;

/** Tempi that the first path may take, and how far they lie from the middle one (from the literature: 110 BPM, 0.6 octaves). */
const WHOLE_RANGE = { fastestBpm: 215, slowestBpm: 45, intervals: 60 };
const MIDDLE_BPM = 110;
const TEMPO_OCTAVES = 0.6;

/** Paths are looked for in parts of the range as well, each less than an octave, so that none is missed. */
const PART_RANGES = [
  { fastestBpm: 75, slowestBpm: 45, intervals: 24 },
  { fastestBpm: 110, slowestBpm: 65, intervals: 24 },
  { fastestBpm: 160, slowestBpm: 95, intervals: 24 },
  { fastestBpm: 225, slowestBpm: 140, intervals: 24 },
];

/** The price of a change of tempo (Krebs, Böck and Widmer 2015: 100). */
const STEADINESS = 100;

/**
 * A bar of two is likelier to be half a bar of four at twice the tempo: songs in two are rare, and in
 * six-eight the division in three speaks for itself. In nats, by trial with made bands.
 */
const TWO_PRICE = 2;

/** Tempi this near to each other are one. */
const SAME_TEMPO = 0.04;

/** What speaks for the tempo before a silence, in nats: as much as a clear back-beat. */
const GOES_ON = 4;

const FEWEST_BEATS = 6;

/** How near to a tap a beat is made likely, in seconds, and by how much at the tap. */
const TAP_SPREAD_SEC = 0.04;
const TAP_PROBABILITY = 0.9;

/**
 * Every reading of the beats that evidence allows, best first; none where nothing attacks. `combined`
 * as of `combinedRise`. Where a tempo was found before, the same is likelier.
 */
export function readBeats(
  evidence: BeatEvidence,
  combined: Float32Array,
  corrections: readonly BeatCorrection[],
  tempoBefore?: number,
): BeatReading[] {
  if (!combined.some((value) => value > 0)) return [];
  const probability = tapped(beatProbability(combined), evidence, corrections);
  const ground = fitGround(evidence, combined);
  return candidates(evidence, probability)
    .map((candidate) => readingOf(candidate, ground))
    .map((reading) => {
      const ratio = tempoOf(reading.beats, evidence.frameRate) / (tempoBefore ?? Number.NaN);
      return Math.abs(ratio - 1) < SAME_TEMPO
        ? { ...reading, fit: reading.fit + GOES_ON }
        : reading;
    })
    .toSorted((a, b) => b.fit - a.fit);
}

/** Taps and dragged beats make a beat likelier where they are; what is heard stays in force elsewhere. */
function tapped(
  probability: Float32Array,
  evidence: BeatEvidence,
  corrections: readonly BeatCorrection[],
): Float32Array {
  const raised = probability.slice();
  const spread = TAP_SPREAD_SEC * evidence.frameRate;
  for (const sec of tapSecs(corrections)) {
    const at = (sec - riseSec(0, evidence)) * evidence.frameRate;
    for (let i = Math.max(0, Math.floor(at - 2 * spread)); i < at + 2 * spread; i++) {
      if (i >= raised.length) break;
      const near = TAP_PROBABILITY * Math.exp(-0.5 * ((i - at) / spread) ** 2);
      raised[i] = Math.max(raised[i]!, near);
    }
  }
  return raised;
}

function tapSecs(corrections: readonly BeatCorrection[]): number[] {
  return corrections.flatMap((correction) => {
    if (correction.kind === 'taps') return correction.taps;
    return correction.kind === 'moved-beat' ? [correction.toSec] : [];
  });
}

function candidates(evidence: BeatEvidence, probability: Float32Array): Candidate[] {
  const whole = pathIn(WHOLE_RANGE, evidence, probability);
  const fromWhole = BEAT_LEVELS.map((level) => ({
    beats: beatsAtLevel(whole, level),
    origin: originOf(level, false),
  }));
  const fromParts = PART_RANGES.flatMap((range) => {
    const path = pathIn(range, evidence, probability);
    return OFF_BEATS.map((level) => ({
      beats: beatsAtLevel(path, level),
      origin: originOf(level, true),
    }));
  });
  return [...fromWhole, ...fromParts].filter(({ beats }) => {
    if (beats.length < FEWEST_BEATS) return false;
    const bpm = (60 * evidence.frameRate * (beats.length - 1)) / (beats.at(-1)! - beats[0]!);
    return bpm > SLOWEST_BPM && bpm < FASTEST_BPM;
  });
}

function pathIn(
  range: typeof WHOLE_RANGE,
  evidence: BeatEvidence,
  probability: Float32Array,
): readonly number[] {
  const { fastestBpm, slowestBpm } = range;
  const intervals = beatIntervals(fastestBpm, slowestBpm, evidence.frameRate, range.intervals);
  const intervalGain = Float64Array.from(intervals, (frames) => {
    const octaves = Math.log2((60 * evidence.frameRate) / frames / MIDDLE_BPM);
    return -0.5 * (octaves / TEMPO_OCTAVES) ** 2;
  });
  const path = beatPath(probability, { intervals, steadiness: STEADINESS, intervalGain });
  return steadyRow(path, probability);
}

/** Nine signs, 0 or 1, of how a candidate stands to the path that it was made from. */
function originOf({ counted, found, offset }: BeatLevel, ofPart: boolean): number[] {
  const alike = counted === found;
  const ratio = Math.max(counted, found) / Math.min(counted, found);
  const near = (value: number) => Math.abs(offset - value) < 1e-6;
  const signs = [
    !ofPart && alike && near(0),
    ofPart && near(0),
    near(1 / 2),
    near(1 / 4) || near(3 / 4),
    near(1 / 3) || near(2 / 3),
    !ofPart && !alike && near(0),
    !Number.isInteger(ratio),
    ratio === 3,
    ratio === 4,
  ];
  return signs.map(Number);
}

function readingOf({ beats, origin }: Candidate, ground: FitGround): BeatReading {
  const ofBeats = weighed(BEAT_WEIGHTS, [...beatFeatures(beats, ground), ...origin]);
  const sights = beatSights(beats, ground);
  const bars = BAR_LENGTHS.flatMap((barLength) =>
    Array.from({ length: barLength }, (_, phase) => ({
      barLength,
      phase,
      ofBar:
        weighed(BAR_WEIGHTS, barFeatures(sights, barLength, phase)) -
        (barLength === 2 ? TWO_PRICE : 0),
    })),
  );
  const { barLength, phase, ofBar } = bars.toSorted((a, b) => b.ofBar - a.ofBar)[0]!;
  return { beats, barLength, phase, fit: ofBeats + ofBar };
}

function weighed(weights: readonly number[], features: readonly number[]): number {
  if (weights.length !== features.length) throw new Error(`${features.length} features`);
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += weights[i]! * features[i]!;
  return sum;
}

/** The best reading, changed as the player says; undefined where there is none. */
export function correctedReading(
  readings: readonly BeatReading[],
  evidence: BeatEvidence,
  corrections: readonly BeatCorrection[],
): BeatReading | undefined {
  const taps = tapSecs(corrections).toSorted((a, b) => a - b);
  const first = taps.length > 2 ? nearestToTaps(readings, evidence, taps) : readings[0];
  if (!first) return undefined;
  return corrections.reduce(
    (reading, correction) => corrected(reading, evidence, correction),
    first,
  );
}

/** Of readings, the one whose beats lie where somebody tapped; among equals the one that fits best. */
function nearestToTaps(
  readings: readonly BeatReading[],
  evidence: BeatEvidence,
  taps: readonly number[],
): BeatReading | undefined {
  const score = ({ beats, fit }: BeatReading) => {
    const within = beats
      .map((beat) => riseSec(beat, evidence))
      .filter((sec) => sec > taps[0]! - 0.2 && sec < taps.at(-1)! + 0.2);
    const matched = taps.filter((tap) => within.some((sec) => Math.abs(sec - tap) < 0.07)).length;
    return (10 * 2 * matched) / (within.length + taps.length) + 0.1 * fit;
  };
  return readings.toSorted((a, b) => score(b) - score(a))[0];
}

function corrected(
  reading: BeatReading,
  evidence: BeatEvidence,
  correction: BeatCorrection,
): BeatReading {
  const { beats, barLength, phase } = reading;
  const nearest = (sec: number) =>
    nearestBeat(beats, (sec - riseSec(0, evidence)) * evidence.frameRate);
  switch (correction.kind) {
    case 'downbeat':
      return { ...reading, phase: nearest(correction.atSec) % barLength };
    case 'bar-length':
      return { ...reading, barLength: correction.beats, phase: phase % correction.beats };
    case 'twice-as-fast':
      return {
        ...reading,
        beats: beatsAtLevel(beats, { counted: 2, found: 1, offset: 0 }),
        phase: (2 * phase) % barLength,
      };
    case 'half-as-fast': {
      const offset = phase % 2 === 0 ? 0 : 1 / 2;
      return {
        ...reading,
        beats: beatsAtLevel(beats, { counted: 1, found: 2, offset }),
        phase: Math.floor(phase / 2) % barLength,
      };
    }
    case 'off-beat':
      return { ...reading, beats: beatsAtLevel(beats, { ...AS_FOUND, offset: 1 / 2 }) };
    case 'moved-beat':
    case 'taps':
    case 'anew':
      return reading;
    default:
      return unreachable(correction);
  }
}

function nearestBeat(beats: readonly number[], frame: number): number {
  let best = 0;
  for (let k = 1; k < beats.length; k++)
    if (Math.abs(beats[k]! - frame) < Math.abs(beats[best]! - frame)) best = k;
  return best;
}

/** The chosen tempo and up to two others, with the share of the fit that speaks for each. */
export function tempoReadings(
  readings: readonly BeatReading[],
  chosen: BeatReading,
  { frameRate }: BeatEvidence,
  chosenBpm: number,
): TempoReading[] {
  const tempi: { bpm: number; weight: number }[] = [{ bpm: chosenBpm, weight: 0 }];
  const best = Math.max(chosen.fit, readings[0]?.fit ?? chosen.fit);
  for (const { beats, fit } of [chosen, ...readings]) {
    const bpm = tempoOf(beats, frameRate);
    const weight = Math.exp(fit - best);
    const same = tempi.find((tempo) => Math.abs(tempo.bpm / bpm - 1) < SAME_TEMPO);
    if (same) same.weight += weight;
    else tempi.push({ bpm, weight });
  }
  const three = [
    tempi[0]!,
    ...tempi
      .slice(1)
      .toSorted((a, b) => b.weight - a.weight)
      .slice(0, 2),
  ];
  const sum = three.reduce((total, { weight }) => total + weight, 0);
  return three.map(({ bpm, weight }) => ({ bpm, weight: weight / sum }));
}

function tempoOf(beats: readonly number[], frameRate: number): number {
  const intervals = beats.slice(1).map((beat, i) => beat - beats[i]!);
  return (60 * frameRate) / intervals.toSorted((a, b) => a - b)[intervals.length >> 1]!;
}
