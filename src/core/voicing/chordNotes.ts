import { type Chord, type ChordDegree, chordTones } from '../harmony/chord.ts';
import { chromaOf, type KeyNumber, type Semitones } from '../harmony/pitch.ts';

/** One note of a chord in no octave: `semitones` above the root (0 to 21), `chroma` above C (0 to 11). */
export type ChordNote = {
  readonly degree: ChordDegree;
  readonly semitones: Semitones;
  readonly chroma: Semitones;
};

/**
 * The notes of a chord from the root up, tensions last, each key of the octave once: of two degrees
 * that fall on one key (the third and the ♯9 of a minor chord) the one nearer the root stays.
 */
export function chordNotes(chord: Chord): ChordNote[] {
  const notes = chordTones(chord).map(({ degree, semitones, pitchClass }) => ({
    degree,
    semitones,
    chroma: chromaOf(pitchClass),
  }));
  return notes.filter((note, i) => notes.findIndex(({ chroma }) => chroma === note.chroma) === i);
}

/** The chroma of the chord's lowest note: that of its bass, or else of its root. */
export function bassChroma(chord: Chord): Semitones {
  return chromaOf(chord.bass ?? chord.root);
}

/** Whether the root is the lowest note, so that whoever plays the bass plays it. */
export function hasRootBelow(chord: Chord): boolean {
  return bassChroma(chord) === chromaOf(chord.root);
}

/** Semitones from one chroma (or key number) up to the next key of another chroma, 0 to 11. */
export function semitonesUp(from: Semitones, to: Semitones): Semitones {
  return (((to - from) % 12) + 12) % 12;
}

/** Degrees by semitones above the root, for notes that are none of the chord's. */
const FOREIGN_DEGREES: readonly ChordDegree[] = [1, 9, 9, 9, 3, 11, 11, 5, 13, 13, 7, 7];

/**
 * The degree that each key has in a chord. A bass that is none of the chord's notes counts as 1, any
 * other foreign key by its distance above the root (a second is a 9, a fourth an 11, a sixth a 13).
 */
export function degreesOf(chord: Chord): (key: KeyNumber) => ChordDegree {
  const root = chromaOf(chord.root);
  const notes = chordNotes(chord);
  const degrees = FOREIGN_DEGREES.map((foreign, above) => {
    const chroma = (root + above) % 12;
    const own = notes.find((note) => note.chroma === chroma)?.degree;
    return own ?? (chroma === bassChroma(chord) ? 1 : foreign);
  });
  return (key) => degrees[semitonesUp(root, key)]!;
}
