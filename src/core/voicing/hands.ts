import type { Chord } from '../harmony/chord.ts';
import type { KeyNumber, Semitones } from '../harmony/pitch.ts';
import { unreachable } from '../result.ts';
import { bassChroma, chordNotes, hasRootBelow, semitonesUp } from './chordNotes.ts';
import { takenNotes } from './omissions.ts';
import { fitsHand } from './playable.ts';
import { closeShapes, droppedShapes, type KeyRange, keysOfChroma, sharedShapes } from './shapes.ts';
import type { BassManner, VoicingSettings } from './voicing.ts';

/**
 * The keys the right hand may hold for a chord, each list ascending, in its range and span. As many
 * notes as `fullness` allows, or fewer (down to two) where the span has no room for them.
 * - `close`, `rootless`, `shell`: every inversion in close position of the notes that `takenNotes` names.
 * - `open`: the second voice from the top dropped an octave; where no such position is within the
 *   span, that voice left to the bass if it is the same note; where it is not, as `close`.
 */
export function rightHands(chord: Chord, settings: VoicingSettings): KeyNumber[][] {
  for (const shapesOf of settings.manner === 'open' ? OPEN_SHAPES : [closeShapes]) {
    const hands = fullestHands(chord, settings, shapesOf);
    if (hands.length > 0) return hands;
  }
  return [];
}

type ShapesOf = (chromas: readonly Semitones[], range: KeyRange, bass: Semitones) => KeyNumber[][];

const OPEN_SHAPES: readonly ShapesOf[] = [droppedShapes, sharedShapes, closeShapes];

function fullestHands(chord: Chord, settings: VoicingSettings, shapesOf: ShapesOf): KeyNumber[][] {
  const { manner, fullness, spanSemitones } = settings;
  const range = { lowest: settings.rightLowest, highest: settings.rightHighest };
  for (let most: number = fullness; most >= 2; most--) {
    const chromas = takenNotes(chord, manner, most).map(({ chroma }) => chroma);
    const hands = shapesOf(chromas, range, bassChroma(chord)).filter((keys) =>
      fitsHand(keys, spanSemitones),
    );
    if (hands.length > 0) return hands;
  }
  return [];
}

/**
 * The keys the left hand may hold for a chord, each list ascending, in its range and span: the bass
 * with what `settings.bass` adds to it, or alone where that note is not in the chord or out of reach
 * for every bass key of the range. With `elsewhere`, both inversions of the shell, up to the key
 * under the right hand's lowest.
 */
export function leftHands(chord: Chord, settings: VoicingSettings): KeyNumber[][] {
  const { bass, leftLowest, leftHighest, rightLowest, spanSemitones } = settings;
  const fits = (keys: KeyNumber[]) => fitsHand(keys, spanSemitones);
  if (bass === 'elsewhere') {
    const shell = takenNotes(chord, 'shell', 2).map(({ chroma }) => chroma);
    return closeShapes(shell, { lowest: leftLowest, highest: rightLowest - 1 }).filter(fits);
  }
  const keys = keysOfChroma(bassChroma(chord), { lowest: leftLowest, highest: leftHighest });
  const interval = addedInterval(chord, bass);
  if (interval === undefined) return keys.map((key) => [key]);
  const pairs = keys.map((key) => [key, key + interval]);
  const playable = pairs.filter((pair) => pair[1]! <= leftHighest && fits(pair));
  return playable.length > 0 ? playable : keys.map((key) => [key]);
}

/** Semitones from the bass up to the note the left hand adds to it; undefined where it adds none. */
function addedInterval(
  chord: Chord,
  bass: Exclude<BassManner, 'elsewhere'>,
): Semitones | undefined {
  switch (bass) {
    case 'single':
      return undefined;
    case 'octave':
      return 12;
    case 'fifth':
      return intervalAboveBass(chord, 5, [7]);
    case 'tenth': {
      const third = intervalAboveBass(chord, 3, [4, 3]);
      return third === undefined ? undefined : 12 + third;
    }
    default:
      return unreachable(bass);
  }
}

/** Over the root the chord's own degree; over another bass the first of `sizes` that reaches a chord note. */
function intervalAboveBass(
  chord: Chord,
  degree: 3 | 5,
  sizes: readonly Semitones[],
): Semitones | undefined {
  const notes = chordNotes(chord);
  if (hasRootBelow(chord)) return notes.find((note) => note.degree === degree)?.semitones;
  const intervals = notes.map(({ chroma }) => semitonesUp(bassChroma(chord), chroma));
  return sizes.find((size) => intervals.includes(size));
}
