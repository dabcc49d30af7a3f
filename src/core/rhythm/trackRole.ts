import { attacksOf } from './attacks.ts';
import type { BandTrack, TrackRole } from './band.ts';

/** Words in a track's name that tell what it does, first match first (common practice). */
const NAME_WORDS: readonly (readonly [RegExp, TrackRole | 'guitar'])[] = [
  [/\b(drums?|percussion|perc|kit)\b/i, 'drums'],
  [/bass(?!oon)/i, 'bass'],
  [/\b(vocals?|vox|voice|sung|singer|melody|tune|lead vocals?)\b/i, 'sung'],
  [/\b(strum\w*|rhythm guitar)\b/i, 'strumming'],
  [/\b(pick\w*|finger\w*|arpegg\w*|banjo)\b/i, 'picking'],
  [/guitar|gtr/i, 'guitar'],
];

/**
 * What General MIDI's programs (as sent, from 0) do in a band: families by eights, reference 1.1 and
 * common practice. Winds, solo strings and synthesiser leads carry the tune.
 */
const PROGRAM_ROLES: readonly (readonly [from: number, to: number, role: TrackRole | 'guitar'])[] =
  [
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

/** From this share of its attacks on being chords of three notes, a guitar strums. */
const STRUM_SHARE = 0.4;

/** A low part whose notes stay under this is a bass whatever plays it (G3, common practice). */
const BASS_CEILING = 55;

/** Share of a part's attacks that strike so many notes or more; 0 for no notes. */
function chordShare(track: Pick<BandTrack, 'notes'>, size: number): number {
  const attacks = attacksOf(track.notes);
  return attacks.filter((attack) => attack.length >= size).length / Math.max(1, attacks.length);
}

function guitarRole(track: Pick<BandTrack, 'notes'>): TrackRole {
  return chordShare(track, 3) >= STRUM_SHARE ? 'strumming' : 'picking';
}

/** The middle one of the key numbers, sorted; -1 for no notes. */
function medianKey(track: Pick<BandTrack, 'notes'>): number {
  const keys = track.notes.map((note) => note.keyNumber).toSorted((a, b) => a - b);
  return keys[Math.floor(keys.length / 2)] ?? -1;
}

/**
 * What a track seems to do. Its channel decides for drums, then words in its name, then its
 * program; guitars strum or pick by how often three or more notes are struck together; a tune in
 * chords is no sung line, and a line that keeps below G3 in single notes is a bass. A guess: the
 * user has the last word.
 */
export function guessRole(
  track: Pick<BandTrack, 'name' | 'program' | 'isDrums' | 'notes'>,
): TrackRole {
  if (track.isDrums) return 'drums';
  const named = NAME_WORDS.find(([words]) => words.test(track.name))?.[1];
  const byProgram = PROGRAM_ROLES.find(
    ([from, to]) => track.program >= from && track.program <= to,
  )?.[2];
  const role = named ?? byProgram ?? 'other';
  if (role === 'guitar') return guitarRole(track);
  if (role === 'other' && medianKey(track) <= BASS_CEILING - 12 && chordShare(track, 2) < 0.1)
    return 'bass';
  if (role === 'sung' && chordShare(track, 2) > 0.5) return 'other';
  return role;
}
