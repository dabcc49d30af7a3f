import type { KeyNumber, Semitones } from '../harmony/pitch.ts';
import { semitonesUp } from './chordNotes.ts';

/** Keys from `lowest` to `highest`, ends included. */
export type KeyRange = { readonly lowest: KeyNumber; readonly highest: KeyNumber };

/** The keys of one chroma in a range, ascending. */
export function keysOfChroma(chroma: Semitones, range: KeyRange): KeyNumber[] {
  const keys: KeyNumber[] = [];
  const first = range.lowest + semitonesUp(range.lowest, chroma);
  for (let key = first; key <= range.highest; key += 12) keys.push(key);
  return keys;
}

/**
 * All inversions in close position: every note once, within less than an octave, in every octave of
 * the range. `chromas` differ. Each shape ascends; shapes ascend by their lowest key.
 */
export function closeShapes(chromas: readonly Semitones[], range: KeyRange): KeyNumber[][] {
  const lowestKeys = chromas.flatMap((chroma) => keysOfChroma(chroma, range));
  return lowestKeys
    .toSorted((a, b) => a - b)
    .map((lowest) =>
      chromas.map((chroma) => lowest + semitonesUp(lowest, chroma)).toSorted((a, b) => a - b),
    )
    .filter((shape) => isWithin(shape, range));
}

/**
 * All open positions: close ones of three or more notes of which the second voice from the top is
 * dropped an octave. Each shape ascends; shapes ascend by the lowest key of the close position.
 */
export function droppedShapes(chromas: readonly Semitones[], range: KeyRange): KeyNumber[][] {
  return withoutSecond(chromas, range)
    .map(({ second, others }) => [second - 12, ...others])
    .filter((shape) => isWithin(shape, range));
}

/**
 * Open positions whose dropped voice is the bass itself: close ones of three or more notes without
 * the second voice from the top, where that has the bass's chroma. In order as `droppedShapes`.
 */
export function sharedShapes(
  chromas: readonly Semitones[],
  range: KeyRange,
  bass: Semitones,
): KeyNumber[][] {
  return withoutSecond(chromas, range)
    .filter(({ second }) => semitonesUp(second, bass) === 0)
    .map(({ others }) => others);
}

/** Close positions taken apart: the second voice from the top, and the others. */
function withoutSecond(chromas: readonly Semitones[], range: KeyRange) {
  if (chromas.length < 3) return [];
  return closeShapes(chromas, range).map((shape) => ({
    second: shape.at(-2)!,
    others: shape.toSpliced(-2, 1),
  }));
}

function isWithin(shape: readonly KeyNumber[], range: KeyRange): boolean {
  return shape.every((key) => key >= range.lowest && key <= range.highest);
}
