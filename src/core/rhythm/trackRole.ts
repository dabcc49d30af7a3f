import type { KeyNumber, Semitones } from '../harmony/pitch.ts';
import { type Attack, attacksOf } from './attacks.ts';
import type { BandTrack, TrackRole } from './band.ts';

/** What a name or a program says: a role, or an instrument whose notes decide. */
type Hint = TrackRole | 'guitar' | 'keys';

/** Words in a track's name that tell what it does, first match first (common practice). */
const NAME_WORDS: readonly (readonly [RegExp, Hint])[] = [
  [/\b(drums?|percussion|perc|kit)\b/i, 'drums'],
  [/bass(?!oon| clar| tromb| drum)|\b(e\.? ?)?bs\b/i, 'bass'],
  [/\b(vocals?|vox|voice|sung|singer|melody|tune|lead vocals?)\b/i, 'sung'],
  [/\b(strum(med|ming|s)?|rhythm (guitar|gtr))\b/i, 'strumming'],
  [/\b((finger-?)?pick(s|ed|ing)?|finger(ed|style)?|arpegg(io|ios|iated)?|banjo)\b/i, 'picking'],
  [/guitar|\bgtr/i, 'guitar'],
  [/\b(piano|pno|organ|rhodes|keys|keyboards?|clav(inet)?|accordion|accompaniment)\b/i, 'keys'],
];

/** Who wrote a track down is no instrument, whatever the name sounds like. */
const AUTHOR = /\b(by|sequenced|seq\.?|arr\.?|arranged|copyright)\b.*$|\(c\).*$|©.*$/i;

/**
 * What General MIDI's programs (as sent, from 0) do in a band: families by eights, reference 1.1 and
 * common practice. Winds, solo strings and synthesiser leads carry the tune.
 */
const PROGRAM_ROLES: readonly (readonly [from: number, to: number, role: Hint])[] = [
  [0, 7, 'keys'],
  [16, 23, 'keys'],
  [24, 31, 'guitar'],
  [32, 39, 'bass'],
  [40, 42, 'sung'],
  [52, 54, 'sung'],
  [56, 60, 'sung'],
  [64, 79, 'sung'],
  [80, 87, 'sung'],
  [104, 107, 'guitar'],
  [112, 119, 'drums'],
];

/** From this share of its attacks on being chords, a guitar strums, and keys accompany. */
const CHORD_SHARE = 0.4;

/** A line has chords in no more of its attacks than this. */
const LINE_SHARE = 0.1;

/** A low part whose middle note stays under this is a bass whatever plays it (G2, common practice). */
const BASS_CEILING: KeyNumber = 43;

/** A single line of keys whose middle note is this or higher carries the tune (middle C, common practice). */
const TUNE_FLOOR: KeyNumber = 60;

/** Intervals of two strings struck together as one chord: a fourth, a fifth, an octave. */
const POWER_INTERVALS: readonly Semitones[] = [5, 7, 12];

function share(track: Pick<BandTrack, 'notes'>, holds: (attack: Attack) => boolean): number {
  const attacks = attacksOf(track.notes);
  return attacks.filter(holds).length / Math.max(1, attacks.length);
}

function isPowerChord(attack: Attack): boolean {
  const [low, high] = attack.map(({ keyNumber }) => keyNumber).toSorted((a, b) => a - b);
  return attack.length === 2 && POWER_INTERVALS.includes(high! - low!);
}

function guitarRole(track: Pick<BandTrack, 'notes'>): TrackRole {
  const chords = share(track, (attack) => attack.length >= 3 || isPowerChord(attack));
  return chords >= CHORD_SHARE ? 'strumming' : 'picking';
}

/** The middle one of the key numbers, sorted; -1 for no notes. */
function medianKey(track: Pick<BandTrack, 'notes'>): number {
  const keys = track.notes.map((note) => note.keyNumber).toSorted((a, b) => a - b);
  return keys[Math.floor(keys.length / 2)] ?? -1;
}

function isLine(track: Pick<BandTrack, 'notes'>): boolean {
  return share(track, ({ length }) => length >= 2) < LINE_SHARE;
}

/** Keys accompany; a single line of them is a tune above middle C. */
function keysRole(track: Pick<BandTrack, 'notes'>): TrackRole {
  return isLine(track) && medianKey(track) >= TUNE_FLOOR ? 'sung' : 'accompaniment';
}

/** What the program says, except where a name speaks of plucking on a program that is a bass. */
function hintOf({ name, program }: Pick<BandTrack, 'name' | 'program'>): Hint {
  const instrument = name.replace(AUTHOR, '');
  const named = NAME_WORDS.find(([words]) => words.test(instrument))?.[1];
  const byProgram = PROGRAM_ROLES.find(([from, to]) => program >= from && program <= to)?.[2];
  const isPlucked = named === 'picking' || named === 'guitar' || named === 'strumming';
  return (byProgram === 'bass' && isPlucked ? byProgram : named) ?? byProgram ?? 'other';
}

/**
 * What a track seems to do. Its channel decides for drums, then words in its name, then its
 * program, which also decides what is picked on a bass; guitars strum or pick by how often they strike three notes
 * or two strings of a power chord together; pianos and organs accompany, unless they play a single line, which
 * is a tune or, below G2, a bass; a tune in chords is no sung line. A guess: the user has the last word.
 */
export function guessRole(
  track: Pick<BandTrack, 'name' | 'program' | 'isDrums' | 'notes'>,
): TrackRole {
  if (track.isDrums) return 'drums';
  const hint = hintOf(track);
  const isLow = medianKey(track) <= BASS_CEILING && isLine(track);
  if (isLow && (hint === 'other' || hint === 'keys')) return 'bass';
  if (hint === 'guitar') return guitarRole(track);
  if (hint === 'keys') return keysRole(track);
  if (hint === 'sung' && share(track, ({ length }) => length >= 2) > 0.5) return 'other';
  return hint;
}
