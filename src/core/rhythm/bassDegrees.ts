import type { Chord } from '../harmony/chord.ts';
import { chromaOf, type KeyNumber, type Semitones } from '../harmony/pitch.ts';
import { tempoBeatTicks } from '../time/meter.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import type { BandBar, BandNote } from './band.ts';
import type { RootSpan } from './likelyRoots.ts';
import type { BassTone } from './tones.ts';

/**
 * Degrees by semitones above the root, from the root's own octave up. What no bass tone of a pattern
 * names goes to the nearest that it passes to (common practice): second to third, fourth to fifth.
 */
const DEGREES: readonly BassTone[] = [
  'root',
  'root',
  'third',
  'third',
  'third',
  'fifth',
  'fifth',
  'fifth',
  'sixth',
  'sixth',
  'seventh',
  'seventh',
];

/** So near to the start of a harmony a note comes with it. */
const TOGETHER_TICKS: Ticks = 60;

/** Degree of a note so many semitones from the root key that the bass uses; below it only the fifth has a name. */
function degreeOf(semitones: Semitones): BassTone {
  const folded = ((semitones % 12) + 12) % 12;
  if (folded === 7 && semitones < 0) return 'fifth-below';
  if (folded === 0 && semitones > 0) return 'octave';
  if ((folded === 3 || folded === 4) && semitones > 12) return 'tenth';
  return DEGREES[folded]!;
}

/** The key on which the bass plays a root: the lowest of its notes on it, or the nearest below its lowest note. */
function rootKey(notes: readonly BandNote[], root: number): KeyNumber {
  const keys = notes.map((note) => note.keyNumber);
  const roots = keys.filter((key) => key % 12 === root);
  const lowest = Math.min(...(roots.length > 0 ? roots : keys));
  return lowest - ((lowest - root + 120) % 12);
}

/** A note so shortly before the next harmony can lead into it: the beat that the tempo counts in its bar. */
function approachTicks(note: BandNote, bars: readonly BandBar[]): Ticks {
  const bar = bars.findLast(({ startTick }) => startTick <= note.startTick) ?? bars[0];
  return bar ? tempoBeatTicks(bar.meter) : TICKS_PER_QUARTER;
}

function isApproach(
  note: BandNote,
  here: RootSpan,
  next: RootSpan | undefined,
  bars: readonly BandBar[],
): boolean {
  if (!next || next.root === here.root) return false;
  if (next.startTick - note.startTick > approachTicks(note, bars)) return false;
  const up = (next.root - note.keyNumber + 120) % 12;
  const isOwnTone = [0, 7].includes((note.keyNumber - here.root + 120) % 12);
  return up === 1 && !isOwnTone;
}

/** From this share of the harmonies on it is meant that they begin on another degree than their root … */
const MEANT_SHARE = 0.75;

/** … if there are so many of them. */
const FEWEST_HARMONIES = 4;

/**
 * A bass begins a chord on its root, or on its written bass, which is a root of the hand as well: where it seems to
 * begin on another degree, the harmony was heard wrong, unless that degree opens nearly all of them. `openings` are the
 * indices of the notes that come with their harmony.
 */
function openedOnRoots(degrees: readonly BassTone[], openings: readonly number[]): BassTone[] {
  const isRoot = (degree: BassTone) => degree === 'root' || degree === 'octave';
  const isMeant = (degree: BassTone) =>
    openings.length >= FEWEST_HARMONIES &&
    openings.filter((i) => degrees[i] === degree).length >= MEANT_SHARE * openings.length;
  const opens = new Set(openings);
  return degrees.map((degree, i) =>
    opens.has(i) && !isRoot(degree) && !isMeant(degree) ? 'root' : degree,
  );
}

/**
 * What each bass note is against the harmony it sounds in: the lowest of its notes on the root is the
 * root, the one above it the octave. A note a semitone under the next root, in the last beat before
 * it comes, approaches it. The note that comes with a harmony is its root (`openedOnRoots`). `notes` and `harmonies` ascend; a note before the first harmony counts to
 * the first. Without harmonies every note is a root.
 */
export function bassDegrees(
  notes: readonly BandNote[],
  harmonies: readonly RootSpan[],
  bars: readonly BandBar[],
): BassTone[] {
  const spanOf = (note: BandNote) =>
    Math.max(
      0,
      harmonies.findLastIndex((h) => h.startTick <= note.startTick + TOGETHER_TICKS),
    );
  const rootKeys = new Map<number, KeyNumber>();
  const degrees = notes.map((note): BassTone => {
    const index = spanOf(note);
    const harmony = harmonies[index];
    if (!harmony) return 'root';
    if (isApproach(note, harmony, harmonies[index + 1], bars)) return 'approach';
    const key = rootKeys.get(harmony.root) ?? rootKey(notes, harmony.root);
    rootKeys.set(harmony.root, key);
    return degreeOf(note.keyNumber - key);
  });
  const openings = notes.flatMap((note, i) => {
    const span = harmonies[spanOf(note)];
    return span && Math.abs(note.startTick - span.startTick) <= TOGETHER_TICKS ? [i] : [];
  });
  return openedOnRoots(degrees, openings);
}

/** Where written chords are known: their roots as spans, a slash chord's bass for its root; N.C. gives none. */
export function chordRoots(
  spans: readonly {
    readonly startTick: Ticks;
    readonly endTick: Ticks;
    readonly chord: Chord | 'no-chord';
  }[],
): RootSpan[] {
  return spans.flatMap(({ startTick, endTick, chord }) =>
    chord === 'no-chord' ? [] : [{ startTick, endTick, root: chromaOf(chord.bass ?? chord.root) }],
  );
}
