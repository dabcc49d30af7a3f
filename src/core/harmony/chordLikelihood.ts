import { type ChordQuality, QUALITY_INTERVALS } from './chord.ts';
import { type Semitones, semitonesOf } from './pitch.ts';

/** A root, as a place in the octave above C, with a quality: a chord whatever its bass. */
export type ChordSound = { readonly root: Semitones; readonly quality: ChordQuality };

/**
 * Qualities that are told apart by ear, and how rare each is beside major, as natural logarithms: about a
 * third of pop's chords are minor, a fifth have a seventh, the rest are few (de Clercq and Temperley 2011 for
 * rock, from memory).
 */
const RARITY: readonly (readonly [ChordQuality, number])[] = [
  ['major', 0],
  ['minor', -0.1],
  ['dominant-seventh', -1],
  ['minor-seventh', -1.2],
  ['major-seventh', -1.2],
  ['suspended-fourth', -2.5],
  ['dominant-seventh-suspended-fourth', -2.5],
  ['diminished', -2.5],
  ['half-diminished-seventh', -2],
  ['diminished-seventh', -2.5],
  ['augmented', -3],
  ['suspended-second', -3.5],
  ['major-sixth', -3.5],
  ['minor-sixth', -3.5],
];

/** Every chord that is told apart, root by root from C up. */
export const CHORD_SOUNDS: readonly ChordSound[] = Array.from({ length: 12 }, (_, root) =>
  RARITY.map(([quality]) => ({ root, quality })),
).flat();

/** How rare each of `CHORD_SOUNDS` is beside a major triad, as natural logarithms. */
export const CHORD_RARITY: readonly number[] = CHORD_SOUNDS.map(
  (_, i) => RARITY[i % RARITY.length]![1],
);

/**
 * The share of what sounds in the chords' register that lies on the chord's notes; the rest is spread over the
 * others (measured on made songs: 0.8 to 0.87).
 */
const ON_CHORD = 0.84;

/** How much of it each note has against the third: the root's third partial is a fifth; sevenths are left out at times. */
const NOTE_WEIGHT: Readonly<Record<number, number>> = { 1: 1.15, 3: 1, 5: 1.1, 7: 0.85 };

/** Shares of what sounds in the bass by degree of the chord; the rest is spread over the other notes (measured on made songs). */
const IN_BASS: Readonly<Record<number, number>> = { 1: 0.42, 5: 0.18, 3: 0.11, 7: 0.05 };
const IN_BASS_OTHER = 0.05;

/** What the bass counts beside the chords' register. */
const BASS_WEIGHT = 0.8;

/** Natural logarithms of shares of the twelve places above a root: those given, and what they leave over evenly. */
function logShares(given: ReadonlyMap<Semitones, number>): Float64Array {
  const sum = [...given.values()].reduce((total, share) => total + share, 0);
  const rest = (1 - sum) / (12 - given.size);
  return Float64Array.from({ length: 12 }, (_, i) => Math.log(given.get(i) ?? rest));
}

function degreeOf(interval: string): number {
  return Number.parseInt(interval, 10);
}

function chordShares(quality: ChordQuality): Float64Array {
  const intervals = QUALITY_INTERVALS[quality];
  const weights = intervals.map((name) => NOTE_WEIGHT[degreeOf(name)] ?? 1);
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return logShares(
    new Map(intervals.map((name, i) => [semitonesOf(name), (ON_CHORD * weights[i]!) / sum])),
  );
}

function bassShares(quality: ChordQuality): Float64Array {
  return logShares(
    new Map(
      QUALITY_INTERVALS[quality].map((name) => [
        semitonesOf(name),
        IN_BASS[degreeOf(name)] ?? IN_BASS_OTHER,
      ]),
    ),
  );
}

const SHARES = RARITY.map(([quality]) => ({
  chord: chordShares(quality),
  bass: bassShares(quality),
}));

/** The shares of the twelve notes from C up that sound in a slice, each adding up to 1. */
export type NoteShares = {
  readonly chroma: ArrayLike<number>;
  readonly bass: ArrayLike<number>;
};

/** What a draw of a note tells where all twelve are as likely, in the chords' register and in the bass. */
export const EVEN_LIKELIHOOD = (1 + BASS_WEIGHT) * Math.log(1 / 12);

/**
 * How likely each of `CHORD_SOUNDS` gives these shares of notes: natural logarithms for a single draw of a
 * note, times which the longer one listens (a multinomial model of chroma).
 */
export function chordLikelihoods({ chroma, bass }: NoteShares): Float64Array {
  return Float64Array.from(CHORD_SOUNDS, ({ root }, place) => {
    const shares = SHARES[place % SHARES.length]!;
    let sum = 0;
    for (let i = 0; i < 12; i++) {
      const note = (root + i) % 12;
      sum += chroma[note]! * shares.chord[i]! + BASS_WEIGHT * bass[note]! * shares.bass[i]!;
    }
    return sum;
  });
}
