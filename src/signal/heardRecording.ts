import type { Chord } from '../core/harmony/chord.ts';
import type { Mode } from '../core/harmony/key.ts';
import type { PitchClass } from '../core/harmony/pitch.ts';
import type { Seconds } from '../core/time/ticks.ts';

/** Mono sound, −1 to 1, at any rate from 8000 to 192000 Hz. */
export type MonoRecording = { readonly samples: Float32Array; readonly sampleRateHz: number };

/** A tempo that the recording may have; weights of all sum to 1, the first is the one that the beats keep to. */
export type TempoReading = { readonly bpm: number; readonly weight: number };

/** A beat of the recording; position 0 is the downbeat. */
export type RecordedBeat = { readonly sec: Seconds; readonly positionInBar: number };

/** An attack of anything; strength from 0 to 1, where 1 is as strong as the strongest of the recording. */
export type RecordedOnset = { readonly sec: Seconds; readonly strength: number };

export type DrumPiece = 'kick' | 'snare' | 'hat';

/** `hat` is any hi-hat or cymbal; `probability`, 0 to 1, says how likely it is that piece. */
export type RecordedDrumHit = RecordedOnset & {
  readonly piece: DrumPiece;
  readonly probability: number;
};

/** A note of the bass line; `keyNumber` as on a piano, middle C = 60. */
export type RecordedBassNote = RecordedOnset & {
  readonly durationSec: Seconds;
  readonly keyNumber: number;
  readonly probability: number;
};

/** A stroke of a picked or strummed instrument; `keyNumber` is its strongest pitch where one stands out. */
export type RecordedPick = RecordedOnset & {
  readonly keyNumber?: number;
  readonly probability: number;
};

/** What may sound for a while, and how probable it is; the weights of all that may sound at a place sum to 1. */
export type ChordReading = { readonly chord: Chord | 'no-chord'; readonly weight: number };

/** The likeliest chord of a stretch, and others that it may be, likeliest first. */
export type RecordedChord = ChordReading & {
  readonly fromSec: Seconds;
  readonly toSec: Seconds;
  readonly alternatives: readonly ChordReading[];
};

/** Confidence from 0 (a guess) to 1. */
export type RecordedKey = {
  readonly tonic: PitchClass;
  readonly mode: Mode;
  readonly confidence: number;
};

/** A stretch with the same label as another one is the same music again. */
export type RecordedSection = {
  readonly fromSec: Seconds;
  readonly toSec: Seconds;
  readonly label: string;
};

/**
 * What was heard in a recording: proposals, never the answer. Seconds count from its first sample,
 * lists ascend; what was not heard is an empty list, a tempo or a bar of 0, a key of `undefined`.
 */
export type HeardRecording = {
  readonly tempoBpm: number;
  readonly tempi: readonly TempoReading[];
  readonly beats: readonly RecordedBeat[];
  readonly beatsPerBar: number;
  /** From 0 (attacks fall as they may: noise, speech) to 1 (they gather on the beats). */
  readonly beatConfidence: number;
  readonly onsets: readonly RecordedOnset[];
  readonly drums: readonly RecordedDrumHit[];
  readonly bass: readonly RecordedBassNote[];
  readonly picks: readonly RecordedPick[];
  readonly chords: readonly RecordedChord[];
  readonly key: RecordedKey | undefined;
  readonly sections: readonly RecordedSection[];
};
