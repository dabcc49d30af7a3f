import { type Chord, chordTones } from '../harmony/chord.ts';
import {
  chromaOf,
  type IntervalName,
  type KeyNumber,
  keyNumberOf,
  type Pitch,
  type PitchClass,
  transposePitchClass,
} from '../harmony/pitch.ts';

/** How the twelve steps above a root are usually spelled where the chord does not say. */
const STEPS: readonly IntervalName[] = [
  '1P',
  '2m',
  '2M',
  '3m',
  '3M',
  '4P',
  '5d',
  '5P',
  '6m',
  '6M',
  '7m',
  '7M',
];

/**
 * A key number as it is spelled over a chord: as the chord's own note or bass where it is one;
 * a note that leads a semitone up into `next` as the leading note under it; otherwise by its
 * usual interval above the root. Without a chord, with sharps from C.
 */
export function spelledPitch(keyNumber: KeyNumber, chord: Chord | undefined, next?: Pitch): Pitch {
  const chroma = keyNumber % 12;
  const own = chord && ownPitchClass(chord, chroma);
  const leads = !own && next && keyNumberOf(next) === keyNumber + 1;
  const pitchClass = own ?? (leads ? transposePitchClass(next, '-2m') : usual(chord, chroma));
  return inOctaveOf(keyNumber, simpleOrSharp(pitchClass, chroma));
}

/** Whether a key sounds one of a chord's notes or its bass, in any octave. */
export function isOwnNote(keyNumber: KeyNumber, chord: Chord): boolean {
  return ownPitchClass(chord, keyNumber % 12) !== undefined;
}

function ownPitchClass(chord: Chord, chroma: number): PitchClass | undefined {
  const tones = chordTones(chord).map((tone) => tone.pitchClass);
  const own = chord.bass ? [...tones, chord.bass] : tones;
  return own.find((pitchClass) => chromaOf(pitchClass) === chroma);
}

const C: PitchClass = { letter: 'C', alteration: 0 };
const SHARPS: readonly IntervalName[] = STEPS.map(
  (step) => ({ '2m': '1A', '3m': '2A', '5d': '4A', '6m': '5A', '7m': '6A' })[step] ?? step,
);

function usual(chord: Chord | undefined, chroma: number): PitchClass {
  if (!chord) return transposePitchClass(C, SHARPS[chroma]!);
  const step = (chroma - chromaOf(chord.root) + 12) % 12;
  return transposePitchClass(chord.root, STEPS[step]!);
}

/** A pitch class with more than two signs is spelled from C instead. */
function simpleOrSharp(pitchClass: PitchClass, chroma: number): PitchClass {
  return Math.abs(pitchClass.alteration) <= 2 ? pitchClass : usual(undefined, chroma);
}

function inOctaveOf(keyNumber: KeyNumber, pitchClass: PitchClass): Pitch {
  const inOctaveZero = keyNumberOf({ ...pitchClass, octave: 0 });
  return { ...pitchClass, octave: (keyNumber - inOctaveZero) / 12 };
}
