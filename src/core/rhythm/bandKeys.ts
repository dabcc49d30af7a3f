import { type Chord, chordTones } from '../harmony/chord.ts';
import { chromaOf, type KeyNumber, type PitchClass } from '../harmony/pitch.ts';
import type { DrumPart } from './drumVoices.ts';
import { bassKeys, degreesOfBass } from './toneKeys.ts';
import type { BassTone } from './tones.ts';

/** What each drum sounds in the General MIDI percussion map (docs/sources.md#percussion-map); percussion is a tambourine. */
export const DRUM_SOUND: Readonly<Record<DrumPart, KeyNumber>> = {
  kick: 36,
  snare: 38,
  'hi-hat': 42,
  tom: 45,
  cymbal: 51,
  percussion: 54,
};

/** Where a bass guitar plays its roots (from its lowest string, E1) and the highest its other degrees go, G2. */
const BASS_LOWEST: KeyNumber = 28;
const BASS_HIGHEST: KeyNumber = 43;

/** A guitar's lowest string, E2; its roots lie in the octave above. */
const GUITAR_LOWEST: KeyNumber = 40;

const STRINGS = 6;
const OCTAVE = 12;

function keyFrom(lowest: KeyNumber, pitchClass: PitchClass): KeyNumber {
  return lowest + ((((chromaOf(pitchClass) - lowest) % OCTAVE) + OCTAVE) % OCTAVE);
}

/** The root (or the bass of a slash chord) where a bass guitar plays it: E1 to E♭2, 28 to 39. */
export function bassGuitarRoot(chord: Chord): KeyNumber {
  return keyFrom(BASS_LOWEST, chord.bass ?? chord.root);
}

/**
 * A bass tone on a bass guitar. Degrees above G2 are played an octave lower, octaves and tenths
 * above the root stay; an approach under the lowest string is played an octave higher.
 * `nextRoot` is the bass note that comes next.
 */
export function bassGuitarKey(tone: BassTone, chord: Chord, nextRoot: KeyNumber): KeyNumber {
  const root = bassGuitarRoot(chord);
  const key = bassKeys(tone, chord, [root], nextRoot)[0] ?? root;
  if (key < BASS_LOWEST) return key + OCTAVE;
  const mayBeHigh = tone === 'octave' || tone === 'tenth';
  return key > BASS_HIGHEST && !mayBeHigh ? key - OCTAVE : key;
}

/**
 * A chord as six strings of a guitar hold it, low to high from E2 up: the shape of a barre chord,
 * root, fifth, seventh (or sixth, or the octave), third, fifth and the root at the top (common
 * practice). A slash bass takes the lowest string, and what would lie below it is left out.
 */
export function guitarKeys(chord: Chord): KeyNumber[] {
  const root = keyFrom(GUITAR_LOWEST, chord.root);
  const lowest = chord.bass ? keyFrom(GUITAR_LOWEST, chord.bass) : root;
  const { third, fifth, seventh } = degreesOfBass(chord);
  const colour = hasSixthOrSeventh(chord) ? seventh : OCTAVE;
  const shape = [0, fifth, colour, OCTAVE + third, OCTAVE + fifth, 2 * OCTAVE];
  const above = shape.map((step) => root + step).filter((key) => key > lowest);
  return [...new Set([lowest, ...above])].toSorted((a, b) => a - b).slice(0, STRINGS);
}

function hasSixthOrSeventh(chord: Chord): boolean {
  return chordTones(chord).some((tone) => tone.degree === 6 || tone.degree === 7);
}
