import { BAR_LENGTHS, barFeatures, beatSights } from './barFit.ts';
import { beatProbability } from './beatActivation.ts';
import { type BeatCandidate, beatCandidates } from './beatCandidates.ts';
import { type BeatCorrection, tappedSecs } from './beatCorrections.ts';
import { type BeatEvidence, riseSec } from './beatEvidence.ts';
import { beatFeatures, type FitGround, fitGround } from './beatFit.ts';
import { BAR_WEIGHTS, BEAT_WEIGHTS } from './beatWeights.ts';
import { SAME_TEMPO, tempoOf } from './tempo.ts';

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

/**
 * A bar of two is likelier to be half a bar of four at twice the tempo: songs in two are rare, and in
 * six-eight the division in three speaks for itself. In nats, by trial with made bands.
 */
const TWO_PRICE = 2;

/** What speaks for the tempo before a silence, in nats: as much as a clear back-beat. */
const GOES_ON = 4;

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
  return beatCandidates(probability, evidence.frameRate)
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
  for (const sec of tappedSecs(corrections)) {
    const at = (sec - riseSec(0, evidence)) * evidence.frameRate;
    for (let i = Math.max(0, Math.floor(at - 2 * spread)); i < at + 2 * spread; i++) {
      if (i >= raised.length) break;
      const near = TAP_PROBABILITY * Math.exp(-0.5 * ((i - at) / spread) ** 2);
      raised[i] = Math.max(raised[i]!, near);
    }
  }
  return raised;
}

function readingOf({ beats, origin }: BeatCandidate, ground: FitGround): BeatReading {
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
