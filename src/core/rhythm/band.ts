import type { Key } from '../harmony/key.ts';
import type { KeyNumber } from '../harmony/pitch.ts';
import type { Meter } from '../time/meter.ts';
import type { TempoMap } from '../time/tempoMap.ts';
import type { Ticks } from '../time/ticks.ts';

/**
 * What a track of the band does for the groove. `accompaniment`: a piano or organ, whose low part is a bass line
 * and whose chords are struck; `other` (pads, effects) feeds no source.
 */
export const TRACK_ROLES = [
  'bass',
  'picking',
  'strumming',
  'accompaniment',
  'drums',
  'sung',
  'other',
] as const;

export type TrackRole = (typeof TRACK_ROLES)[number];

/** One note as the band plays it; `velocity` 1 to 127, lengths at least one tick. */
export type BandNote = {
  readonly startTick: Ticks;
  readonly durationTicks: Ticks;
  readonly keyNumber: KeyNumber;
  readonly velocity: number;
};

/**
 * One instrument of the band. `channel` 0 to 15 and `program` 0 to 127 as MIDI sends them (General
 * MIDI counts both from 1); `isDrums` where the channel is General MIDI's percussion channel. Notes
 * ascend by start, then by key number. `guess` is what it seems to do; the user may know better.
 */
export type BandTrack = {
  readonly name: string;
  readonly channel: number;
  readonly program: number;
  readonly isDrums: boolean;
  readonly notes: readonly BandNote[];
  readonly guess: TrackRole;
};

/** One bar of the band's music and the meter it is in. */
export type BandBar = { readonly startTick: Ticks; readonly meter: Meter };

/**
 * What a band plays, from the downbeat of its first bar on. The bars lie end to end and reach to
 * the last note's end, `lengthTicks`; every track has at least one note.
 */
export type Band = {
  readonly bars: readonly BandBar[];
  readonly tempoMap: TempoMap;
  readonly tracks: readonly BandTrack[];
  readonly lengthTicks: Ticks;
  readonly key?: Key;
};
