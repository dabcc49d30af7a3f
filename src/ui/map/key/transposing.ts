import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import { fifthsOf, type Key, scaleOf, writableKey } from '../../../core/harmony/key.ts';
import {
  chromaOf,
  formatPitchClass,
  type IntervalName,
  type KeyNumber,
  type PitchClass,
  PLAIN_PITCH_CLASSES,
} from '../../../core/harmony/pitch.ts';
import { intervalForSinger, transposeKey, transposeSong } from '../../../core/harmony/transpose.ts';
import { unreachable } from '../../../core/result.ts';
import type { Song } from '../../../core/song/song.ts';

/** Intervals by which a song is moved, in words. */
export const INTERVAL_WORDS = {
  '2m': 'a half step',
  '2M': 'a whole step',
  '3m': 'a minor third',
  '3M': 'a major third',
  '4P': 'a fourth',
  '5d': 'a tritone',
  '5P': 'a fifth',
  '6m': 'a minor sixth',
  '6M': 'a major sixth',
  '7m': 'a minor seventh',
  '7M': 'a major seventh',
  '8P': 'an octave',
} as const satisfies Readonly<Record<IntervalName, string>>;

export type MoveInterval = keyof typeof INTERVAL_WORDS;

/** The ways in which a new key is said. Notes of tune and singer are key numbers. */
export type Move =
  | {
      readonly kind: 'interval';
      readonly direction: 'up' | 'down';
      readonly interval: MoveInterval;
    }
  | { readonly kind: 'key'; readonly tonic: PitchClass }
  | { readonly kind: 'singer'; readonly tune: KeyNumber; readonly singer: KeyNumber };

/**
 * Where a move takes a song in a key, as `transposeSong` has it: the interval that was named, or the
 * new key. For a singer it is the key, so that pinned hands go the nearest way in whichever octave
 * the singer reads.
 */
export function moveTarget(move: Move, key: Key): IntervalName | Key {
  switch (move.kind) {
    case 'interval':
      return move.direction === 'up' ? move.interval : `-${move.interval}`;
    case 'key':
      return writableKey({ ...key, tonic: move.tonic });
    case 'singer':
      return writableKey(transposeKey(key, intervalForSinger(key, move.tune, move.singer)));
    default:
      return unreachable(move);
  }
}

/** A key and the first chords that are played in it, by symbol. */
export type SongBeginning = { readonly key: Key; readonly chords: readonly string[] };

/** So many chords show what a key is like to read. */
const SHOWN_CHORDS = 8;

/** How a song begins: its key and the first eight chords of the section that is played first. */
export function songBeginning({ key, sections, form }: Song): SongBeginning {
  const first = sections.find(({ id }) => id === form[0]?.sectionId) ?? sections[0];
  const chords = (first?.slots ?? []).flatMap(({ chord }) =>
    chord === 'no-chord' ? [] : [formatChordSymbol(chord)],
  );
  return { key, chords: chords.slice(0, SHOWN_CHORDS) };
}

/** How the song would begin after a move. */
export function beginningAfter(song: Song, move: Move): SongBeginning {
  return songBeginning(transposeSong(song, moveTarget(move, song.key)));
}

/** The notes that a tune or a voice can end on at the top, C3 to C6, lowest first. */
export const TOP_NOTES: readonly KeyNumber[] = Array.from({ length: 37 }, (_, i) => 48 + i);

function withSign(sign: number): PitchClass[] {
  return PLAIN_PITCH_CLASSES.filter(({ alteration }) => alteration === sign);
}

/**
 * A note's name with its octave (C4 is middle C), spelled as the key's scale spells it; notes outside
 * it with a flat in flat keys and with a sharp in the others.
 */
export function noteNameIn(key: Key, note: KeyNumber): string {
  const names = [...scaleOf(key), ...withSign(0), ...withSign(fifthsOf(key) < 0 ? -1 : 1)];
  const spelled = names.find((name) => chromaOf(name) === note % 12);
  if (!spelled) throw new Error(`key number ${note} has no name`);
  const octave = Math.floor((note - spelled.alteration) / 12) - 1;
  return formatPitchClass(spelled) + octave;
}
