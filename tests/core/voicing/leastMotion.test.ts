import { describe, expect, it } from 'vitest';
import { motion } from '../../../src/core/voicing/motion.ts';

/** Semitones above the root (docs/sources.md#chord-formulae). */
const FORMULAE = {
  major: [0, 4, 7],
  minor: [0, 3, 7],
  dim: [0, 3, 6],
  aug: [0, 4, 8],
  '6': [0, 4, 7, 9],
  m6: [0, 3, 7, 9],
  maj7: [0, 4, 7, 11],
  '7': [0, 4, 7, 10],
  m7: [0, 3, 7, 10],
  m7b5: [0, 3, 6, 10],
  dim7: [0, 3, 6, 9],
} as const;

type Kind = keyof typeof FORMULAE;

/** Every placement of the notes within three octaves, each in each octave. */
function placements(chromas: readonly number[]): number[][] {
  const [first, ...others] = chromas;
  if (first === undefined) return [[]];
  const chroma = first % 12;
  return placements(others).flatMap((rest) =>
    [48, 60, 72].map((octave) => [octave + chroma, ...rest]),
  );
}

/** Least motion from a chord on C4 to one whose root lies so many semitones higher, in whatever octaves. */
function leastMotion(from: Kind, to: Kind, distance: number): number {
  const start = FORMULAE[from].map((semitones) => 60 + semitones);
  const ends = placements(FORMULAE[to].map((semitones) => semitones + distance));
  return Math.min(...ends.map((end) => motion(start, end)));
}

const DISTANCES = Array.from({ length: 12 }, (_, distance) => distance);

// computed: least total over all assignments of voices, the shortest way round the octave; rows met by
// Cohn 1997 (P, L and R move 1, 1 and 2 semitones). A triad that meets a seventh divides one voice.
const TABLE: readonly (readonly [Kind, Kind, string])[] = [
  ['major', 'major', '0 3 6 3 2 3 6 3 2 3 6 3'],
  ['major', 'minor', '1 2 5 4 1 2 5 4 3 2 5 4'],
  ['major', 'dim', '2 1 4 5 2 3 4 5 4 3 4 5'],
  ['major', 'aug', '1 4 5 2 1 4 5 2 1 4 5 2'],
  ['minor', 'major', '1 4 5 2 3 4 5 2 1 4 5 2'],
  ['minor', 'minor', '0 3 6 3 2 3 6 3 2 3 6 3'],
  ['minor', 'dim', '1 2 5 4 3 4 5 4 3 2 5 4'],
  ['minor', 'aug', '2 5 4 1 2 5 4 1 2 5 4 1'],
  ['maj7', 'maj7', '0 4 6 4 4 4 4 4 4 4 6 4'],
  ['maj7', '7', '1 3 5 3 3 5 3 3 5 3 5 5'],
  ['maj7', 'm7', '2 2 6 4 2 6 4 4 6 2 4 6'],
  ['maj7', 'm7b5', '3 1 5 5 3 5 3 3 5 3 3 5'],
  ['maj7', 'dim7', '4 2 4 4 2 4 4 2 4 4 2 4'],
  ['7', '7', '0 4 4 2 4 4 2 4 4 2 4 4'],
  ['7', 'm7', '1 3 5 3 3 5 3 3 5 1 3 5'],
  ['7', 'm7b5', '2 2 6 4 2 6 2 2 6 2 2 6'],
  ['7', 'dim7', '3 1 5 3 1 5 3 1 5 3 1 5'],
  ['m7', 'm7', '0 4 4 2 4 4 4 4 4 2 4 4'],
  ['m7', 'm7b5', '1 3 5 3 3 5 3 3 5 1 3 5'],
  ['m7', 'dim7', '2 2 6 2 2 6 2 2 6 2 2 6'],
  ['m7b5', 'm7b5', '0 4 4 2 4 4 2 4 4 2 4 4'],
  ['m7b5', 'dim7', '1 3 5 1 3 5 1 3 5 1 3 5'],
  ['dim7', 'dim7', '0 4 4 0 4 4 0 4 4 0 4 4'],
  ['major', '7', '2 4 5 4 4 4 4 4 3 3 6 5'],
  ['major', 'maj7', '1 3 6 5 3 3 5 4 2 4 7 5'],
  ['minor', 'm7', '2 4 5 4 3 3 5 5 3 3 6 5'],
];

describe('least motion between chords', () => {
  it.each(TABLE)('from %s to %s, by distance of the roots', (from, to, row) =>
    expect(DISTANCES.map((distance) => leastMotion(from, to, distance)).join(' ')).toBe(row),
  );

  const sameSize = TABLE.filter(([from, to]) => FORMULAE[from].length === FORMULAE[to].length);

  it.each(sameSize)('from %s to %s is the same on the way back', (from, to, row) =>
    expect(DISTANCES.map((up) => leastMotion(to, from, (12 - up) % 12)).join(' ')).toBe(row),
  );

  // Cohn 1997: parallel and leading-tone exchange move one semitone, relative a whole tone.
  it.each([
    ['parallel, C to Cm', 0, 1],
    ['leading-tone exchange, C to Em', 4, 1],
    ['relative, C to Am', 9, 2],
  ])('%s', (_, distance, semitones) =>
    expect(leastMotion('major', 'minor', distance)).toBe(semitones),
  );

  // Cohn (hexatonic pole) and Tymoczko, from memory.
  it.each([
    ['C to A♭m', 8, 3],
    ['C to C♯m', 1, 2],
    ['C to Fm', 5, 2],
  ])('%s', (_, distance, semitones) =>
    expect(leastMotion('major', 'minor', distance)).toBe(semitones),
  );

  // computed: the same notes by another name
  it.each([
    ['6', 'm7', 9],
    ['m6', 'm7b5', 9],
    ['dim7', 'dim7', 3],
    ['dim7', 'dim7', 6],
    ['dim7', 'dim7', 9],
  ] as const)('%s and %s on roots %i apart are one chord', (from, to, distance) =>
    expect(leastMotion(from, to, distance)).toBe(0),
  );
});
