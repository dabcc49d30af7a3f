import { BEAT_LEVELS, type BeatLevel, beatsAtLevel, OFF_BEATS } from './beatLevels.ts';
import { beatIntervals, beatPath } from './beatPath.ts';
import { steadyRow } from './steadyBeats.ts';

/** A row of beats that is judged, and how it came about: nine signs, 0 or 1. */
export type BeatCandidate = {
  readonly beats: readonly number[];
  readonly origin: readonly number[];
};

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

const FEWEST_BEATS = 6;

/**
 * Rows of beats that players may count: the likeliest paths, for all tempi and for parts of the range,
 * at several levels. `probability` as of `beatProbability`, `frameRate` its frames in a second.
 */
export function beatCandidates(probability: Float32Array, frameRate: number): BeatCandidate[] {
  const whole = pathIn(WHOLE_RANGE, probability, frameRate);
  const fromWhole = BEAT_LEVELS.map((level) => ({
    beats: beatsAtLevel(whole, level),
    origin: originOf(level, false),
  }));
  const fromParts = PART_RANGES.flatMap((range) => {
    const path = pathIn(range, probability, frameRate);
    return OFF_BEATS.map((level) => ({
      beats: beatsAtLevel(path, level),
      origin: originOf(level, true),
    }));
  });
  return [...fromWhole, ...fromParts].filter(({ beats }) => {
    if (beats.length < FEWEST_BEATS) return false;
    const bpm = (60 * frameRate * (beats.length - 1)) / (beats.at(-1)! - beats[0]!);
    return bpm > SLOWEST_BPM && bpm < FASTEST_BPM;
  });
}

function pathIn(
  range: typeof WHOLE_RANGE,
  probability: Float32Array,
  frameRate: number,
): readonly number[] {
  const { fastestBpm, slowestBpm } = range;
  const intervals = beatIntervals(fastestBpm, slowestBpm, frameRate, range.intervals);
  const intervalGain = Float64Array.from(intervals, (frames) => {
    const octaves = Math.log2((60 * frameRate) / frames / MIDDLE_BPM);
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
