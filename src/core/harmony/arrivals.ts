import { above, type HeardLine, hasThird, isDominant } from './heardChords.ts';
import { type Key, MODES, type Mode, writableKey } from './key.ts';
import { chromaOf, type Semitones } from './pitch.ts';

const THIRDS: Readonly<Record<Mode, 3 | 4>> = { major: 4, minor: 3 };

/** Whether a chord of the line is the tonic of a key: its root, and its third where the chord has one. */
export function isTonic(line: HeardLine, place: number, tonic: Semitones, mode: Mode): boolean {
  const chord = line[place];
  if (chord?.root !== tonic) return false;
  return hasThird(chord, THIRDS[mode]) || !(hasThird(chord, 3) || hasThird(chord, 4));
}

/**
 * Whether the chord at a place is the tonic of a key and comes right after the dominant (`authentic`)
 * or the fourth of that key (`plagal`); undefined where it is not.
 */
export function arrivalAt(
  line: HeardLine,
  place: number,
  tonic: Semitones,
  mode: Mode,
): 'authentic' | 'plagal' | undefined {
  const before = line[place - 1];
  if (!before || !isTonic(line, place, tonic, mode)) return undefined;
  if (before.root === above(tonic, 7) && isDominant(before)) return 'authentic';
  return before.root === above(tonic, 5) && hasThird(before, THIRDS[mode]) ? 'plagal' : undefined;
}

/**
 * The keys other than the home key that the line arrives in somewhere, each spelled as the chord it
 * arrives at, in the order of their distance above the home key.
 */
export function visitedKeys(line: HeardLine, home: Key): Key[] {
  const homeTonic = chromaOf(home.tonic);
  const tonics = Array.from({ length: 12 }, (_, up) => above(homeTonic, up));
  return tonics.flatMap((tonic) =>
    MODES.filter((mode) => tonic !== homeTonic || mode !== home.mode).flatMap((mode) => {
      const arrival = line.find((_chord, i) => arrivalAt(line, i, tonic, mode))?.chord;
      return arrival ? [writableKey({ tonic: arrival.root, mode })] : [];
    }),
  );
}
