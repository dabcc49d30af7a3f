import type { Chord, ChordQuality } from './chord.ts';
import type { Key } from './key.ts';
import { spelledInKey } from './keySpelling.ts';
import type { Semitones } from './pitch.ts';

/** A chord by sound alone: root and bass as places in the octave above C. */
export type SoundingChord = {
  readonly root: Semitones;
  readonly quality: ChordQuality;
  readonly bass: Semitones;
};

/** A chord by sound, spelled in a key. */
export function spelledChord({ root, quality, bass }: SoundingChord, key: Key): Chord {
  const chord = { root: spelledInKey(root, key), quality, tensions: [] };
  return bass === root ? chord : { ...chord, bass: spelledInKey(bass, key) };
}
