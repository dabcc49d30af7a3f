import { type Chord, writableChord } from './chord.ts';
import { fifthsOf, type Key, writableKey } from './key.ts';
import {
  chromaOf,
  type IntervalName,
  intervalBetween,
  type KeyNumber,
  type PitchClass,
  PLAIN_PITCH_CLASSES,
  type Semitones,
  semitonesOf,
  transposePitchClass,
} from './pitch.ts';

/** The chord an interval higher (lower for a negative one), root and bass spelled by the interval's number. */
export function transposeChord(chord: Chord, interval: IntervalName): Chord {
  const root = transposePitchClass(chord.root, interval);
  return chord.bass
    ? { ...chord, root, bass: transposePitchClass(chord.bass, interval) }
    : { ...chord, root };
}

/** The key an interval higher (lower for a negative one), not respelled: it may need more than seven signs. */
export function transposeKey(key: Key, interval: IntervalName): Key {
  return { tonic: transposePitchClass(key.tonic, interval), mode: key.mode };
}

type FixedKeys = { readonly left: readonly KeyNumber[]; readonly right: readonly KeyNumber[] };

type Slot = { readonly chord: Chord | 'no-chord'; readonly fixedKeys?: FixedKeys };

/** As much of a song as its key bears on. */
type Keyed = {
  readonly key: Key;
  readonly sections: ReadonlyArray<{ readonly slots: readonly Slot[] }>;
  readonly form?: ReadonlyArray<{ readonly ending?: { readonly slots: readonly Slot[] } }>;
};

/** The piano's keys, A0 to C8. */
const PIANO = { lowest: 21, highest: 108 } as const;

/** Moved keys of one hand, an octave further or less where they would leave the piano. */
function movedKeys(keys: readonly KeyNumber[], by: Semitones): KeyNumber[] {
  const moved = keys.map((key) => key + by);
  const low = moved.some((key) => key < PIANO.lowest) ? 12 : 0;
  const high = moved.some((key) => key > PIANO.highest) ? -12 : 0;
  return moved.map((key) => key + low + high);
}

/** A move of a whole song: how its notes are spelled, and how far the hands go. */
type Move = { readonly interval: IntervalName; readonly semitones: Semitones };

function movedSlot<S extends Slot>(slot: S, { interval, semitones }: Move): S {
  const { chord, fixedKeys } = slot;
  return {
    ...slot,
    chord: chord === 'no-chord' ? chord : writableChord(transposeChord(chord, interval)),
    ...(fixedKeys && {
      fixedKeys: {
        left: movedKeys(fixedKeys.left, semitones),
        right: movedKeys(fixedKeys.right, semitones),
      },
    }),
  };
}

/** The way from one pitch class to another that moves the hands least, at most six semitones. */
function nearestSemitones(from: PitchClass, to: PitchClass): Semitones {
  const up = (chromaOf(to) - chromaOf(from) + 12) % 12;
  return up > 6 ? up - 12 : up;
}

/**
 * The song in another key: chords, bass notes and fixed hands move, in sections and other endings; the
 * spelling follows the new key.
 * `to` is an interval (`3m`, `-2M`, compound ones too) or the new key, of which only the tonic counts;
 * the hands go by the interval, or the nearest way to the new key, and stay on the piano. A key with
 * more than seven signs is written as the one that sounds the same (up a major third from E: A♭), and
 * a root or bass that would take three signs is respelled.
 */
export function transposeSong<S extends Keyed>(song: S, to: IntervalName | Key): S {
  const { key } = song;
  const isInterval = typeof to === 'string';
  const tonic = isInterval ? transposePitchClass(key.tonic, to) : to.tonic;
  const newKey = writableKey({ ...key, tonic });
  const semitones = isInterval ? semitonesOf(to) : nearestSemitones(key.tonic, newKey.tonic);
  const move = { interval: intervalBetween(key.tonic, newKey.tonic), semitones };
  const moved = <Part extends { readonly slots: readonly Slot[] }>(part: Part): Part => ({
    ...part,
    slots: part.slots.map((slot) => movedSlot(slot, move)),
  });
  const form = song.form?.map((entry) =>
    entry.ending ? { ...entry, ending: moved(entry.ending) } : entry,
  );
  const sections = song.sections.map(moved);
  return { ...song, key: newKey, sections, ...(form && { form }) };
}

/**
 * The tonic of a sound that gives the fewest signs; where flats and sharps are as many, the one nearer
 * to the old key on the circle of fifths, else the flats.
 */
function plainestTonic(chroma: number, { tonic, mode }: Key): PitchClass {
  const fifths = fifthsOf({ tonic, mode });
  const distance = (to: number) => 100 * Math.abs(to) + Math.abs(to - fifths);
  return PLAIN_PITCH_CLASSES.filter((candidate) => chromaOf(candidate) === chroma)
    .map((candidate) => ({ candidate, signs: fifthsOf({ tonic: candidate, mode }) }))
    .reduce((best, other) => (distance(other.signs) < distance(best.signs) ? other : best))
    .candidate;
}

function addOctaves(interval: IntervalName, octaves: number): IntervalName {
  return `${Number.parseInt(interval, 10) + 7 * octaves}${interval.replace(/^\d+/, '')}`;
}

/**
 * The interval that so many semitones up (down, where negative) are from a key's tonic, spelled so
 * that the new key has the fewest signs; compound beyond the octave.
 */
export function intervalBySemitones(key: Key, semitones: Semitones): IntervalName {
  const chroma = (((chromaOf(key.tonic) + semitones) % 12) + 12) % 12;
  const tonic = semitones % 12 === 0 ? key.tonic : plainestTonic(chroma, key);
  const octaves = Math.floor(Math.abs(semitones) / 12);
  return semitones >= 0
    ? addOctaves(intervalBetween(key.tonic, tonic), octaves)
    : `-${addOctaves(intervalBetween(tonic, key.tonic), octaves)}`;
}

/**
 * The interval by which to transpose a song so that its tune's highest note becomes the singer's
 * highest comfortable one (both as key numbers): see `intervalBySemitones`.
 */
export function intervalForSinger(
  key: Key,
  tuneHighest: KeyNumber,
  singerHighest: KeyNumber,
): IntervalName {
  return intervalBySemitones(key, singerHighest - tuneHighest);
}
