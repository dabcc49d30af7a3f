import { type ReadChord, readChords, type SoundReading } from '../core/harmony/chordReadings.ts';
import type { Key } from '../core/harmony/key.ts';
import { spelledChord } from '../core/harmony/soundingChord.ts';
import { findBeats } from './beats.ts';
import { type ChordSlice, slicesOf } from './chordSlices.ts';
import type {
  ChordReading,
  MonoRecording,
  RecordedBeat,
  RecordedChord,
  RecordedKey,
} from './heardRecording.ts';
import { keyOf } from './keyEvidence.ts';

/** What harmony was heard in a recording. */
export type Harmony = {
  readonly chords: readonly RecordedChord[];
  readonly key: RecordedKey | undefined;
  /** How much A lies over 440 Hz, in cents, −50 to 50. */
  readonly tuningCents: number;
  readonly slices: readonly ChordSlice[];
};

const C_MAJOR: Key = { tonic: { letter: 'C', alteration: 0 }, mode: 'major' };

/**
 * The chords of a recording from its beginning to its end, one after the other, each with what it may be as well;
 * they change on `beats` (those of `findBeats` if left out) rather than between them. Chords are spelled in the key
 * that was heard. No samples give none; silence and drums alone give one slice of `no-chord`.
 */
export function findChords(
  recording: MonoRecording,
  beats: readonly RecordedBeat[] = findBeats(recording).beats,
): readonly RecordedChord[] {
  return findHarmony(recording, beats).chords;
}

/** Chords and key of a recording; see `findChords`. */
export function findHarmony(recording: MonoRecording, beats: readonly RecordedBeat[]): Harmony {
  const { slices, tuningCents } = slicesOf(recording, beats);
  const read = readChords(slices);
  const key = keyOf(slices, read);
  return {
    chords: read.map((chord) => recorded(chord, slices, key ?? C_MAJOR)),
    key,
    tuningCents,
    slices,
  };
}

function spelled({ chord, weight }: SoundReading, key: Key): ChordReading {
  return { chord: chord === 'no-chord' ? chord : spelledChord(chord, key), weight };
}

function recorded(read: ReadChord, slices: readonly ChordSlice[], key: Key): RecordedChord {
  return {
    fromSec: slices[read.first]!.fromSec,
    toSec: slices[read.last]!.toSec,
    ...spelled(read, key),
    alternatives: read.alternatives.map((alternative) => spelled(alternative, key)),
  };
}
