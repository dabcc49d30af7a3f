import type { ChordDegree } from '../harmony/chord.ts';
import type { KeyNumber, Semitones } from '../harmony/pitch.ts';

export type HandName = 'left' | 'right';

/** One note of a voicing; `degree` is its degree in the chord (the bass of a slash chord has the degree it has there, or 1). */
export type VoicedNote = {
  readonly keyNumber: KeyNumber;
  readonly degree: ChordDegree;
  readonly hand: HandName;
};

/** What both hands hold for one chord, low to high; empty for N.C. */
export type Voicing = readonly VoicedNote[];

/** The keys each hand holds, low to high. */
export type HeldKeys = {
  readonly left: readonly KeyNumber[];
  readonly right: readonly KeyNumber[];
};

/** How the right hand's chord is built. */
export type Manner = 'close' | 'open' | 'shell' | 'rootless';

/**
 * What the left hand holds: the bass note alone, with its octave, its fifth or its tenth; or, where
 * someone else plays the bass, the chord's shell up to just under the right hand's range.
 */
export type BassManner = 'single' | 'octave' | 'fifth' | 'tenth' | 'elsewhere';

/**
 * What one semitone of each term costs; 0 switches a term off. The terms are defined at `stepCost`
 * and `holdCost`. Sums are exact, and ties true ties, where every weight is a whole number of 64ths.
 */
export type VoicingWeights = {
  /** Least total motion of the right hand's notes from chord to chord. */
  readonly motion: number;
  /** Leap of the right hand's top note, which is heard as a tune. */
  readonly topLeap: number;
  /** Leap of the left hand's lowest note. */
  readonly leftLeap: number;
  /** Distance of each hand's middle from the middle of its range. */
  readonly register: number;
  /** How far intervals lie under the low-interval limits. */
  readonly lowIntervals: number;
  /** Hands more than two octaves apart, or crossing. */
  readonly handGap: number;
};

/**
 * What the hands may do and what is weighed. Spans are the distance from a hand's lowest to its
 * highest note in semitones (12 an octave, 14 a ninth, 16 a tenth). Ranges are key numbers, ends
 * included.
 */
export type VoicingSettings = {
  readonly manner: Manner;
  readonly spanSemitones: Semitones;
  readonly rightLowest: KeyNumber;
  readonly rightHighest: KeyNumber;
  readonly leftLowest: KeyNumber;
  readonly leftHighest: KeyNumber;
  readonly bass: BassManner;
  /** The most notes the right hand holds; larger chords leave some out. */
  readonly fullness: 3 | 4 | 5;
  readonly weights: VoicingWeights;
};

/** How far a hand can be said to reach, in semitones: up to two octaves. */
export const SPANS = { lowest: 0, highest: 24 } as const;

/** What a semitone of a term can cost. */
export const WEIGHTS = { lowest: 0, highest: 1000 } as const;

/** Motion alone: the optimum is then the least total motion of the right hand. */
export const MOTION_ONLY: VoicingWeights = {
  motion: 1,
  topLeap: 0,
  leftLeap: 0,
  register: 0,
  lowIntervals: 0,
  handGap: 0,
};

/** Motion first; the other terms decide between hands that move about as far (our own choice). */
export const DEFAULT_WEIGHTS: VoicingWeights = {
  motion: 1,
  topLeap: 1 / 8,
  leftLeap: 1 / 16,
  register: 1 / 16,
  lowIntervals: 1 / 8,
  handGap: 1 / 16,
};

/**
 * Hands that reach an octave (docs/sources.md#hand-spans): chords in close position around G4, from
 * G3 to G5, over a single bass note from E1 to E3.
 */
export const DEFAULT_VOICING: VoicingSettings = {
  manner: 'close',
  spanSemitones: 12,
  rightLowest: 55,
  rightHighest: 79,
  leftLowest: 28,
  leftHighest: 52,
  bass: 'single',
  fullness: 4,
  weights: DEFAULT_WEIGHTS,
};

/** The keys of each hand of a voicing, low to high. */
export function heldKeys(voicing: Voicing): HeldKeys {
  return { left: keysOfHand(voicing, 'left'), right: keysOfHand(voicing, 'right') };
}

/** The keys that one hand holds in a voicing, low to high; none where the hand is free. */
export function keysOfHand(voicing: Voicing, hand: HandName): KeyNumber[] {
  return voicing
    .filter((note) => note.hand === hand)
    .map((note) => note.keyNumber)
    .toSorted((a, b) => a - b);
}
