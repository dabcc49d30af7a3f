import { QUALITY_INTERVALS } from './chord.ts';
import { CHORD_RARITY, CHORD_SOUNDS, chordLikelihoods } from './chordLikelihood.ts';
import { chordsSound, type HeardSlice, type SliceStart } from './chordPresence.ts';
import { type Semitones, semitonesOf } from './pitch.ts';
import type { SoundingChord } from './soundingChord.ts';

/** What may sound, with its weight; all weights of a place sum to 1. */
export type SoundReading = {
  readonly chord: SoundingChord | 'no-chord';
  readonly weight: number;
};

/** The likeliest chord of the slices `first` to `last`, and what else it may be, likeliest first. */
export type ReadChord = SoundReading & {
  readonly first: number;
  readonly last: number;
  readonly alternatives: readonly SoundReading[];
};

/** How probable a change of chord is where a slice starts (house values; see docs/decisions). */
const CHANGES: Readonly<Record<SliceStart, number>> = {
  bar: 0.6,
  middle: 0.35,
  beat: 0.18,
  between: 0.01,
};

/** As how many independent draws of a note a second of sound counts. */
const DRAWS_A_SECOND = 11;

/** How much rarity counts while the path is found: what is rare must be plain to be heard as a chord of its own. */
const PATH_RARITY = 3;

/** Natural logarithm of how probable it is that no chord follows a chord. */
const LOG_NO_CHORD = -4;

/** Place of "no chord" behind those of `CHORD_SOUNDS`. */
const NO_CHORD = CHORD_SOUNDS.length;

/** Natural logarithm of what is out of the question: chords where none sounds, no chord where one does. */
const IMPOSSIBLE = Number.NEGATIVE_INFINITY;

/**
 * Draws are not independent over a chord's time (the same voicing, the same tune), so that its weights are those
 * of fewer of them.
 */
const WEIGHT_SHARE = 0.35;

/** Alternatives that are told of each chord, and how probable one must be to be told. */
const MOST_ALTERNATIVES = 4;
const LEAST_WEIGHT = 0.01;

/** A chord is over another bass than its root where that has so many times the root's share of the bass. */
const BASS_OVER_ROOT = 2;

/** Qualities that are one triad with or without something on top: which of them it is, is told once the path is found. */
const FAMILIES: readonly (readonly string[])[] = [
  ['major', 'dominant-seventh', 'major-seventh'],
  ['minor', 'minor-seventh'],
];

const ENTRANCES: Float64Array = entrances();

/** How probable each chord is as the next one, as natural logarithms. */
function entrances(): Float64Array {
  const rarities = CHORD_RARITY.map((rarity) => PATH_RARITY * rarity);
  const sum = rarities.reduce((total, rarity) => total + Math.exp(rarity), 0);
  return Float64Array.from([...rarities.map((r) => r - Math.log(sum)), LOG_NO_CHORD]);
}

/** How likely each chord, and behind them none, makes a slice sound as it does. */
function likelihoodsOf(slice: HeardSlice, hasChord: boolean): Float64Array {
  if (!hasChord) return ENTRANCES.map((_, i) => (i === NO_CHORD ? 0 : IMPOSSIBLE));
  const draws = DRAWS_A_SECOND * slice.durationSec;
  return Float64Array.from([...chordLikelihoods(slice).map((draw) => draw * draws), IMPOSSIBLE]);
}

function placeOfMost(values: ArrayLike<number>): number {
  let most = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[most]!) most = i;
  return most;
}

/** The likeliest course of chords, one for each slice, by place in `CHORD_SOUNDS` (Viterbi 1967). */
function likeliestPath(
  slices: readonly HeardSlice[],
  likelihoods: readonly Float64Array[],
): number[] {
  let scores = ENTRANCES.map((entrance, i) => entrance + likelihoods[0]![i]!);
  const origins = slices.slice(1).map(({ starts }, t) => {
    const best = placeOfMost(scores);
    const staying = Math.log(1 - CHANGES[starts]);
    const moved = scores[best]! + Math.log(CHANGES[starts]);
    const origin = Int16Array.from(scores, (score, i) =>
      score + staying >= moved + ENTRANCES[i]! ? i : best,
    );
    scores = scores.map(
      (score, i) => Math.max(score + staying, moved + ENTRANCES[i]!) + likelihoods[t + 1]![i]!,
    );
    return origin;
  });
  const path = [placeOfMost(scores)];
  for (const origin of origins.toReversed()) path.push(origin[path.at(-1)!]!);
  return path.toReversed();
}

/** Weights of all places from the sums of their likelihoods, adding up to 1. */
function weightsOf(sums: Float64Array): Float64Array {
  const logs = sums.map((sum, i) => WEIGHT_SHARE * sum + (CHORD_RARITY[i] ?? LOG_NO_CHORD));
  const most = Math.max(...logs);
  const odds = logs.map((log) => Math.exp(log - most));
  const all = odds.reduce((total, each) => total + each, 0);
  return odds.map((each) => each / all);
}

/** The chord of the path, with or without a seventh as its weight says. */
function refined(place: number, weights: Float64Array): number {
  const sound = CHORD_SOUNDS[place];
  const family = FAMILIES.find((qualities) => sound && qualities.includes(sound.quality));
  if (!sound || !family) return place;
  const own = [...CHORD_SOUNDS.keys()].filter(
    (i) => CHORD_SOUNDS[i]!.root === sound.root && family.includes(CHORD_SOUNDS[i]!.quality),
  );
  return own.reduce((best, i) => (weights[i]! > weights[best]! ? i : best));
}

/** The chord's own note that lies in the bass: the root, unless another one has clearly more of it. */
function bassOf(place: number, bass: ArrayLike<number>): Semitones {
  const { root, quality } = CHORD_SOUNDS[place]!;
  const notes = QUALITY_INTERVALS[quality].map((name) => (root + semitonesOf(name)) % 12);
  const lowest = notes.reduce((best, note) => (bass[note]! > bass[best]! ? note : best));
  return bass[lowest]! > BASS_OVER_ROOT * bass[root]! ? lowest : root;
}

function readingOf(place: number, weights: Float64Array, bass: ArrayLike<number>): SoundReading {
  const weight = weights[place]!;
  const sound = CHORD_SOUNDS[place];
  return sound
    ? { chord: { ...sound, bass: bassOf(place, bass) }, weight }
    : { chord: 'no-chord', weight };
}

function summed(rows: readonly ArrayLike<number>[], weightAt = (_row: number) => 1): Float64Array {
  const sum = new Float64Array(rows[0]?.length ?? 0);
  rows.forEach((row, r) => {
    for (let i = 0; i < sum.length; i++) sum[i]! += weightAt(r) * row[i]!;
  });
  return sum;
}

/**
 * The chords of slices that follow each other: the likeliest course (a hidden Markov model whose
 * chords change rather at bar lines and in the middle of bars, Viterbi), neighbours that are the same joined.
 * Whether a triad has a seventh is decided over the chord's whole time. Where `chordsSound` hears none
 * it is `no-chord`. No slices give none.
 */
export function readChords(slices: readonly HeardSlice[]): ReadChord[] {
  if (slices.length === 0) return [];
  const sounding = chordsSound(slices);
  const likelihoods = slices.map((slice, i) => likelihoodsOf(slice, sounding[i]!));
  const path = likeliestPath(slices, likelihoods);
  const starts = [...path.keys()].filter((i) => path[i] !== path[i - 1]);
  return starts.map((first, s) => {
    const last = (starts[s + 1] ?? path.length) - 1;
    const weights = weightsOf(summed(likelihoods.slice(first, last + 1)));
    const own = slices.slice(first, last + 1);
    const bass = summed(
      own.map((slice) => slice.bass),
      (i) => own[i]!.durationSec,
    );
    const chosen = refined(path[first]!, weights);
    const alternatives = [...weights.keys()]
      .filter((place) => place !== chosen && weights[place]! >= LEAST_WEIGHT)
      .toSorted((a, b) => weights[b]! - weights[a]!)
      .slice(0, MOST_ALTERNATIVES)
      .map((place) => readingOf(place, weights, bass));
    return { first, last, ...readingOf(chosen, weights, bass), alternatives };
  });
}
