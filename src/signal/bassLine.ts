import type { Seconds } from '../core/time/ticks.ts';
import { BASS_MODEL } from './bassModel.ts';
import { BASS_KEYS, bassSights, type LowSight, pitchSigns } from './bassSights.ts';
import type { RecordedBassNote } from './heardRecording.ts';
import { likelihood, weighedSum } from './logistic.ts';
import { LOWEST_PLACE_KEY, type LowPitches, levelOfKey } from './lowPitches.ts';
import type { Strike } from './strikeLooks.ts';
import { quantile } from './strikes.ts';

/** What a strike would be as a bass note: its likeliest key, what speaks for it, how strongly it is preferred. */
type Candidate = {
  readonly key: number;
  readonly signs: readonly number[];
  readonly level: number;
  /** The probabilities of the best key and of the next one, if it is a bass note. */
  readonly best: number;
  readonly next: number;
  /** Natural log of the sum of what all keys score. */
  readonly total: number;
};

/** There is a bass line where so many of the notes, and this share of them, are at least so likely. */
const SURE = { probability: 0.5, notes: 3, share: 0.1 } as const;

/** The loud note that others are measured by: 1 in 50 is louder. */
const LOUD_NOTES = 0.98;

/** A note is over when its pitch has lost so much of its level, and lasts no longer than this. */
const OVER_SHARE = 0.5;
const LONGEST_SEC: Seconds = 4;
const SHORTEST_SEC: Seconds = 0.06;

/** Neighbours further away than this are all the same. */
const FAR_SEC: Seconds = 0.5;

const MIDDLE_KEY = 38;

/** Loud bass: the level that 4 in 5 strikes stay under, in the three octaves from the lowest key. */
const LOUD_BASS = 0.8;
const BASS_LEVELS = 36;

/**
 * The bass line of a recording: where notes begin, how long they last, their keys, their strength
 * beside the loudest of them and how likely each begins there. Each strike is looked at for a low pitch
 * (`pitchSigns`, joined in a log-linear model), then a logistic model says whether it begins a bass
 * note, from how it looks and how clear the pitch is. Nothing where hardly a note is likely.
 */
export function findBassNotes(strikes: readonly Strike[], pitches: LowPitches): RecordedBassNote[] {
  const secs = strikes.map(({ sec }) => sec);
  const sights = bassSights(pitches, secs);
  const candidates = sights.map(candidateOf);
  const probabilities = onsetProbabilities(strikes, sights, candidates);
  const taken = candidates.flatMap((candidate, i) =>
    probabilities[i]! >= BASS_MODEL.taken
      ? [{ ...candidate, sec: secs[i]!, probability: probabilities[i]! }]
      : [],
  );
  const sure = taken.filter(({ probability }) => probability >= SURE.probability).length;
  if (sure < Math.max(SURE.notes, SURE.share * taken.length)) return [];
  const loud = quantile(
    taken.map(({ level }) => level),
    LOUD_NOTES,
  );
  return taken.map(({ sec, key, level, probability }, i) => ({
    sec,
    durationSec: lengthOf(key, sec, taken[i + 1]?.sec, pitches),
    keyNumber: key,
    strength: loud > 0 ? Math.min(1, level / loud) : 0,
    probability,
  }));
}

const KEYS = Array.from(
  { length: BASS_KEYS.highest - BASS_KEYS.lowest + 1 },
  (_, i) => BASS_KEYS.lowest + i,
);

function candidateOf(sight: LowSight): Candidate {
  const signs = KEYS.map((key) => pitchSigns(sight, key));
  const scores = signs.map((own) => weighedSum(own, BASS_MODEL.pitch));
  const highest = Math.max(...scores);
  const sum = scores.reduce((total, score) => total + Math.exp(score - highest), 0);
  const at = scores.indexOf(highest);
  const next = Math.max(...scores.filter((_, i) => i !== at));
  return {
    key: KEYS[at]!,
    signs: signs[at]!,
    level: sight.after[KEYS[at]! - LOWEST_PLACE_KEY]!,
    best: 1 / sum,
    next: Math.exp(next - highest) / sum,
    total: highest + Math.log(sum),
  };
}

function onsetProbabilities(
  strikes: readonly Strike[],
  sights: readonly LowSight[],
  candidates: readonly Candidate[],
): number[] {
  const totals = candidates.map(({ total }) => total);
  const ascending = totals.toSorted((a, b) => a - b);
  const clearTotal = quantile(totals, 0.9);
  const loudBass = quantile(
    sights.map(({ after }) => Math.max(...after.subarray(0, BASS_LEVELS))),
    LOUD_BASS,
  );
  const { means, deviations } = BASS_MODEL.pitch;
  return candidates.map(({ key, signs, level, best, next, total }, i) => {
    const sec = strikes[i]!.sec;
    const terms = [
      ...strikes[i]!.look,
      ...signs.map((sign, s) => (sign - means[s]!) / deviations[s]!),
      best,
      best - next,
      total,
      total - clearTotal,
      ascending.indexOf(total) / totals.length,
      candidates[i - 1]?.key === key ? 1 : 0,
      (key - MIDDLE_KEY) / 12,
      level - loudBass,
      Math.min(FAR_SEC, i > 0 ? sec - strikes[i - 1]!.sec : 1),
      Math.min(FAR_SEC, i + 1 < strikes.length ? strikes[i + 1]!.sec - sec : 1),
    ];
    return likelihood(weighedSum(terms, BASS_MODEL.onset));
  });
}

/** Until the next note, or until its pitch has fallen away. */
function lengthOf(
  key: number,
  sec: Seconds,
  nextSec: Seconds | undefined,
  pitches: LowPitches,
): Seconds {
  const end = Math.min(sec + LONGEST_SEC, nextSec ?? Number.POSITIVE_INFINITY);
  let frame = Math.ceil((sec + SHORTEST_SEC) * pitches.frameRate);
  let most = 0;
  for (; frame < Math.min(end * pitches.frameRate, pitches.frameCount); frame++) {
    const level = levelOfKey(pitches, frame, key);
    most = Math.max(most, level);
    if (level < OVER_SHARE * most) break;
  }
  return Math.min(end - sec, Math.max(SHORTEST_SEC, frame / pitches.frameRate - sec));
}
