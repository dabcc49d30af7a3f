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
 * All open positions: close ones of which the second voice from the top is dropped an octave. Each
 * shape ascends; shapes ascend by the lowest key of the close position. One note has none.
 */
export function droppedShapes(chromas: readonly Semitones[], range: KeyRange): KeyNumber[][] {
  return closeShapes(chromas, range).flatMap((shape) => {
    const second = shape.at(-2);
    if (second === undefined) return [];
    const dropped = [second - 12, ...shape.filter((key) => key !== second)];
    return isWithin(dropped, range) ? [dropped] : [];
  });
}

/**
 * Open positions whose dropped voice is the bass itself: close ones without the second voice from
 * the top, where that has the bass's chroma. Two notes at least are left.
 */
export function sharedShapes(
  chromas: readonly Semitones[],
  bass: Semitones,
  range: KeyRange,
): KeyNumber[][] {
  if (chromas.length < 3) return [];
  return closeShapes(chromas, range).flatMap((shape) => {
    const second = shape.at(-2)!;
    return semitonesUp(second, bass) === 0 ? [shape.filter((key) => key !== second)] : [];
  });
}

function isWithin(shape: readonly KeyNumber[], range: KeyRange): boolean {
  return shape.every((key) => key >= range.lowest && key <= range.highest);
}
