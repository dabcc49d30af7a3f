import { type Chord, chordTones } from '../../../core/harmony/chord.ts';
import {
  chromaOf,
  formatPitchClass,
  type KeyNumber,
  type PitchClass,
} from '../../../core/harmony/pitch.ts';

const PLAIN_NAMES = ['C', 'D♭', 'D', 'E♭', 'E', 'F', 'G♭', 'G', 'A♭', 'A', 'B♭', 'B'];

/** A key's name without a chord to spell it, with its octave: C4 is middle C, black keys as flats. */
export function plainKeyName(key: KeyNumber): string {
  return `${PLAIN_NAMES[key % 12]}${Math.floor(key / 12) - 1}`;
}

/** A key's name as the chord spells it, without octave; keys foreign to the chord as flats. */
export function noteName(key: KeyNumber, chord: Chord): string {
  const spelled: readonly PitchClass[] = [
    ...(chord.bass ? [chord.bass] : []),
    ...chordTones(chord).map((tone) => tone.pitchClass),
  ];
  const found = spelled.find((pitchClass) => chromaOf(pitchClass) === key % 12);
  return found ? formatPitchClass(found) : (PLAIN_NAMES[key % 12] ?? '');
}
