import { type Key, writableKey } from '../../../core/harmony/key.ts';
import { formatPitchClass } from '../../../core/harmony/pitch.ts';
import { intervalBySemitones, transposeKey } from '../../../core/harmony/transpose.ts';
import type { Level } from '../../../core/rhythm/levels.ts';
import type { Arrangement } from '../../../state/arrangement.ts';

/** How far a song is moved, by whole and half steps up to an octave. */
const STEPS = [
  '',
  'a half step',
  'a whole step',
  'a minor third',
  'a major third',
  'a fourth',
  'a tritone',
  'a fifth',
  'a minor sixth',
  'a major sixth',
  'a minor seventh',
  'a major seventh',
  'an octave',
] as const;

/** The key in which a song in `key` is played so many semitones higher. */
export function playedKey(key: Key, semitones: number): Key {
  return semitones === 0
    ? key
    : writableKey(transposeKey(key, intervalBySemitones(key, semitones)));
}

/** How far it is from the key that is written: “as written”, “a whole step lower”. */
export function distanceWords(semitones: number): string {
  if (semitones === 0) return 'as written';
  return `${STEPS[Math.abs(semitones)]} ${semitones > 0 ? 'higher' : 'lower'}`;
}

/** What a level is called where it is chosen; undefined is all that is written. */
export function levelName(level: Level | undefined): string {
  return level === undefined ? 'as written' : `level ${level}`;
}

/** An arrangement in a few words: “In E♭”, “In B minor, level 2”. */
export function arrangementWords(written: Key, { semitones, level }: Arrangement): string {
  const { tonic, mode } = playedKey(written, semitones);
  const key = `In ${formatPitchClass(tonic)}${mode === 'minor' ? ' minor' : ''}`;
  return level === undefined ? key : `${key}, ${levelName(level)}`;
}
