import { type Chord, type ChordQuality, QUALITY_INTERVALS } from './chord.ts';
import { chromaOf, type Semitones, semitonesOf } from './pitch.ts';

/** A note of a heard chord: so many scale steps above the root, and its place in the octave above C. */
export type HeardNote = { readonly steps: number; readonly chroma: Semitones };

/** A chord as it sounds, whatever its spelling; root and bass as places in the octave above C, tensions left out. */
export type HeardChord = {
  readonly chord: Chord;
  readonly root: Semitones;
  readonly bass: Semitones;
  readonly notes: readonly HeardNote[];
};

/** Chords in the order in which they are played; `undefined` where none is. */
export type HeardLine = ReadonlyArray<HeardChord | undefined>;

/** The place in the octave so many semitones above another. */
export function above(from: Semitones, semitones: Semitones): Semitones {
  return (from + semitones) % 12;
}

function heard(chord: Chord): HeardChord {
  const root = chromaOf(chord.root);
  const bass = chord.bass ? chromaOf(chord.bass) : root;
  const notes = QUALITY_INTERVALS[chord.quality].map((name) => ({
    steps: Number.parseInt(name, 10) - 1,
    chroma: above(root, semitonesOf(name)),
  }));
  return { chord, root, bass, notes };
}

/** The chords as they sound. */
export function heardLine(chords: ReadonlyArray<Chord | 'no-chord'>): HeardLine {
  return chords.map((chord) => (chord === 'no-chord' ? undefined : heard(chord)));
}

/** Place of the next chord on another root, silences and changes on the same root passed over. */
export function nextRoot(line: HeardLine, from: number): number | undefined {
  return otherRoot(line, from, 1);
}

/** Place of the last chord before on another root, as `nextRoot`. */
export function lastRoot(line: HeardLine, from: number): number | undefined {
  return otherRoot(line, from, -1);
}

function otherRoot(line: HeardLine, from: number, step: 1 | -1): number | undefined {
  for (let i = from + step; i >= 0 && i < line.length; i += step) {
    const chord = line[i];
    if (chord && chord.root !== line[from]?.root) return i;
  }
  return undefined;
}

const DOMINANT_SEVENTHS: readonly ChordQuality[] = [
  'dominant-seventh',
  'augmented-seventh',
  'dominant-seventh-flat-five',
  'dominant-seventh-suspended-fourth',
];

const LEADING: readonly ChordQuality[] = [
  'diminished',
  'diminished-seventh',
  'half-diminished-seventh',
];

const SECONDS: readonly ChordQuality[] = ['minor', 'minor-seventh', ...LEADING];

/** Whether a chord can lead down a fifth by its seventh. */
export function isDominantSeventh({ chord }: HeardChord): boolean {
  return DOMINANT_SEVENTHS.includes(chord.quality);
}

/** Whether a chord can lead down a fifth: dominant sevenths, major and augmented triads. */
export function isDominant(heardChord: HeardChord): boolean {
  const { quality } = heardChord.chord;
  return isDominantSeventh(heardChord) || quality === 'major' || quality === 'augmented';
}

/** Whether a chord can lead up a semitone: diminished and half-diminished ones. */
export function isLeading({ chord }: HeardChord): boolean {
  return LEADING.includes(chord.quality);
}

/** Whether a chord can be the second before a dominant. */
export function isSecond({ chord }: HeardChord): boolean {
  return SECONDS.includes(chord.quality);
}

/** Whether the chord has a third of that size: 4 major, 3 minor. */
export function hasThird({ root, notes }: HeardChord, size: 3 | 4): boolean {
  return hasNote(notes, above(root, size));
}

/** Whether one of the notes lies at a place in the octave. */
export function hasNote(notes: readonly HeardNote[], chroma: Semitones): boolean {
  return notes.some((note) => note.chroma === chroma);
}
