import { type BeatEvidence, riseSec } from './beatEvidence.ts';
import type { RecordedOnset } from './heardRecording.ts';
import { ONSET_BAND_NAMES, type OnsetBand } from './onsetBands.ts';

/**
 * What makes a peak of the combined rise an attack. Frames are those of `BeatEvidence`, 10 ms. Found by trial on rendered drummers and bands.
 */
const PICKING = {
  /** Nothing is higher so many frames before and after. */
  highest: 3,
  /** It is so many times the mean of so many frames to each side, and more by a share of a strong attack. */
  around: 10,
  timesMean: 1.3,
  overMean: 0.05,
  /** It is at least this share of a strong attack of the recording. */
  ofStrong: 0.1,
  /** Strong: so many hundredths of the frames are weaker. */
  strongShare: 0.99,
} as const;

/**
 * The attacks of a recording, of whatever instrument: peaks of the rise of all bands together
 * (peak picking as in Böck, Krebs and Schedl, "Evaluating the Online Capabilities of Onset Detection
 * Methods", ISMIR 2012, with its parameters found anew). Strength 1 is a strong attack.
 */
export function findAttacks(evidence: BeatEvidence): RecordedOnset[] {
  const rise = riseOfAll(evidence);
  const strong = rise.toSorted()[Math.floor(PICKING.strongShare * (rise.length - 1))] ?? 0;
  if (!(strong > 0)) return [];
  const { highest, around, timesMean, overMean, ofStrong } = PICKING;
  const attacks: RecordedOnset[] = [];
  for (let i = 0; i < rise.length; i++) {
    const peak = rise[i]!;
    if (peak < ofStrong * strong || !isHighest(rise, i, highest)) continue;
    const from = Math.max(0, i - around);
    const to = Math.min(rise.length, i + around + 1);
    let sum = 0;
    for (let n = from; n < to; n++) sum += rise[n]!;
    if (peak < overMean * strong + (timesMean * sum) / (to - from)) continue;
    attacks.push({
      sec: Math.max(0, riseSec(i + vertex(rise, i), evidence)),
      strength: Math.min(1, peak / strong),
    });
  }
  return attacks;
}

/** How much a rise of each band counts: sharp and high ones more, since little else sounds there. */
const BAND_WEIGHTS: Readonly<Record<OnsetBand, number>> = {
  low: 1,
  body: 1,
  middle: 1,
  sharp: 1.5,
  high: 2,
};

/** What the evidence keeps is the root of a rise; a rise counts by its power 0.7, soft ones more than in proportion. */
const EXPONENT = 1.4;

/** The bands' rises together, so that what rises in one band only, such as a hi-hat, stands out as well. */
function riseOfAll({ rises, frames }: BeatEvidence): Float32Array {
  const powers = Float32Array.from({ length: 256 }, (_, value) => (value / 255) ** EXPONENT);
  const sum = new Float32Array(frames);
  for (const band of ONSET_BAND_NAMES)
    for (let i = 0; i < frames; i++) sum[i]! += BAND_WEIGHTS[band] * powers[rises[band][i]!]!;
  return sum;
}

/** Of equal strengths the first is the highest. */
function isHighest(rise: Float32Array, at: number, reach: number): boolean {
  for (let n = 1; n <= reach; n++)
    if ((rise[at - n] ?? 0) >= rise[at]! || (rise[at + n] ?? 0) > rise[at]!) return false;
  return true;
}

/** How far from a peak, in frames, the parabola through it and its neighbours is highest. */
function vertex(rise: Float32Array, at: number): number {
  const left = rise[at - 1] ?? 0;
  const right = rise[at + 1] ?? 0;
  const bend = left - 2 * rise[at]! + right;
  return bend < 0 ? (0.5 * (left - right)) / bend : 0;
}
