import type { Chord, ChordDegree } from '../harmony/chord.ts';
import { unreachable } from '../result.ts';
import { type ChordNote, chordNotes, hasRootBelow } from './chordNotes.ts';
import type { Manner } from './voicing.ts';

/** The two notes of a shell, each the first degree that the chord has (common practice). */
const SHELL: readonly (readonly ChordDegree[])[] = [
  [3, 4, 2, 11, 1],
  [7, 6, 5],
];

/**
 * The notes that a hand takes of a chord, from the root up, `most` at the most (at least 2):
 * - `shell`: the third (or what stands for it) with the seventh, else the sixth, else the fifth.
 * - `rootless`: without the root, where the bass has it and two other notes are left.
 * - `close`, `open`: all notes.
 * Over a major third and a minor seventh the perfect eleventh and the third are not held together:
 * the third is left out of an eleventh chord, the eleventh of a thirteenth. What is too much is
 * left out as `leavingOrder` says.
 */
export function takenNotes(chord: Chord, manner: Manner, most: number): ChordNote[] {
  const notes = withoutClash(chordNotes(chord));
  switch (manner) {
    case 'shell':
      return shellOf(notes);
    case 'rootless':
      return fewest(withoutRoot(chord, notes), chord, most);
    case 'close':
    case 'open':
      return fewest(notes, chord, most);
    default:
      return unreachable(manner);
  }
}

/** The two notes of a chord's shell, from the lower degree up. */
function shellOf(notes: readonly ChordNote[]): ChordNote[] {
  return SHELL.flatMap((degrees) => {
    const degree = degrees.find((wanted) => notes.some((note) => note.degree === wanted));
    return notes.filter((note) => note.degree === degree).slice(0, 1);
  });
}

function withoutRoot(chord: Chord, notes: readonly ChordNote[]): readonly ChordNote[] {
  return hasRootBelow(chord) && notes.length > 2 ? notes.slice(1) : notes;
}

function withoutClash(notes: readonly ChordNote[]): readonly ChordNote[] {
  const isDominant = has(notes, 4) && has(notes, 10);
  if (!isDominant || !has(notes, 17)) return notes;
  const leftOut = notes.at(-1)?.semitones === 17 ? 4 : 17;
  return notes.filter(({ semitones }) => semitones !== leftOut);
}

function fewest(notes: readonly ChordNote[], chord: Chord, most: number): ChordNote[] {
  const excess = Math.max(0, notes.length - most);
  const leaving = leavingOrder(notes, chord).slice(0, excess);
  return notes.filter((note) => !leaving.includes(note));
}

/**
 * The notes in the order in which a hand leaves them out (common practice): the perfect fifth; the
 * root, if the bass has it; the perfect eleventh over a major third; the tensions from the lowest
 * up, save the highest; an altered fifth; the root; the highest tension. Thirds, sixths and
 * sevenths, which tell the chord, come last.
 */
function leavingOrder(notes: readonly ChordNote[], chord: Chord): ChordNote[] {
  const roots = notes.filter(({ degree }) => degree === 1);
  const fifths = notes.filter(({ degree }) => degree === 5);
  const tensions = notes.filter(({ degree }) => degree > 7);
  const order = [
    ...fifths.filter(({ semitones }) => semitones === 7),
    ...(hasRootBelow(chord) ? roots : []),
    ...tensions.slice(0, -1).filter(({ semitones }) => semitones === 17 && has(notes, 4)),
    ...tensions.slice(0, -1),
    ...fifths,
    ...roots,
    ...tensions,
    ...notes,
  ];
  return [...new Set(order)];
}

function has(notes: readonly ChordNote[], semitones: number): boolean {
  return notes.some((note) => note.semitones === semitones);
}
