import { writeMidi } from 'midi-file';
import type { Key } from '../core/harmony/key.ts';
import { transposePitchClass } from '../core/harmony/pitch.ts';
import { err, ok, type Result } from '../core/result.ts';
import type { Band, BandTrack } from '../core/rhythm/band.ts';
import type { Note } from '../core/rhythm/note.ts';
import type { PedalSpan } from '../core/rhythm/pedal.ts';
import type { Timeline } from '../core/song/timeline.ts';
import type { TempoMap } from '../core/time/tempoMap.ts';
import { TICKS_PER_QUARTER } from '../core/time/ticks.ts';
import { type MidiError, readChunks, type TrackChunk } from './midiChunks.ts';
import { readEvents, type TimedEvent } from './midiEvents.ts';
import { barsOf, type MeterMark, meterOf, type QuarterTempo, tempoMapOfFile } from './midiTimes.ts';
import { bandTracks, type Rescale, rescaleFrom } from './midiTracks.ts';
import { conductorEvents, leadInTicks, partTracks } from './midiWriting.ts';

export type { MidiError } from './midiChunks.ts';

/** A MIDI file read as a band, and one of its tracks. */
export type MidiBand = Band;
export type MidiTrack = BandTrack;

/** About ten hours of 4/4 at 120; a longer file comes from a damaged time, not from a band. */
const MOST_BARS = 20_000;

function readAllEvents(tracks: readonly TrackChunk[]): Result<TimedEvent[][], MidiError> {
  const all: TimedEvent[][] = [];
  for (const [index, chunk] of tracks.entries()) {
    const events = readEvents(chunk, index);
    if (!events.ok) return events;
    all.push(events.value);
  }
  return ok(all);
}

function inTime(tracks: readonly (readonly TimedEvent[])[]): TimedEvent[] {
  return tracks.flat().toSorted((a, b) => a.tick - b.tick);
}

function meterMarks(events: readonly TimedEvent[], rescale: Rescale): MeterMark[] {
  return events.flatMap(({ tick, event }) => {
    if (event.type !== 'timeSignature') return [];
    const meter = meterOf(event.numerator, event.denominator);
    return meter ? [{ tick: rescale(tick), meter }] : [];
  });
}

function quarterTempos(events: readonly TimedEvent[], rescale: Rescale): QuarterTempo[] {
  return events.flatMap(({ tick, event }) =>
    event.type === 'setTempo'
      ? [{ tick: rescale(tick), microseconds: event.microsecondsPerBeat }]
      : [],
  );
}

/** The key with so many sharps (flats negative): its tonic lies that many fifths from C, or from A in minor. */
function keyOf(fifths: number, scale: number): Key | undefined {
  if (Math.abs(fifths) > 7 || scale > 1) return undefined;
  const mode = scale === 1 ? 'minor' : 'major';
  let tonic: Key['tonic'] = { letter: mode === 'minor' ? 'A' : 'C', alteration: 0 };
  for (let i = 0; i < Math.abs(fifths); i++)
    tonic = transposePitchClass(tonic, fifths > 0 ? '5P' : '4P');
  return { tonic, mode };
}

function firstKey(events: readonly TimedEvent[]): Key | undefined {
  const found = events.find(({ event }) => event.type === 'keySignature')?.event;
  return found?.type === 'keySignature' ? keyOf(found.key, found.scale) : undefined;
}

/**
 * Reads a Standard MIDI File of format 0 or 1 (bare or in a RIFF wrapper) as a band: its bars,
 * tempos, first key and one track for every channel with notes in each of its tracks. Times are
 * rescaled to 480 ticks a quarter and rounded. Without a meter event the file is in 4/4, without a
 * tempo at 120; a meter that can't be barred (see `parseMeter`) is passed over. The error says
 * where the file is wrong.
 */
export function decodeMidi(bytes: Uint8Array): Result<MidiBand, MidiError> {
  const chunks = readChunks(bytes);
  if (!chunks.ok) return chunks;
  const events = readAllEvents(chunks.value.tracks);
  if (!events.ok) return events;
  const rescale = rescaleFrom(chunks.value.ticksPerQuarter);
  const tracks = bandTracks(events.value, rescale);
  if (tracks.length === 0) return err({ kind: 'no-notes' });
  const lengthTicks = tracks
    .flatMap((track) => track.notes)
    .reduce((end, note) => Math.max(end, note.startTick + note.durationTicks), 0);
  const ordered = inTime(events.value);
  const bars = barsOf(meterMarks(ordered, rescale), lengthTicks, MOST_BARS);
  if (!bars) return err({ kind: 'too-long', bars: MOST_BARS });
  const key = firstKey(ordered);
  const tempoMap = tempoMapOfFile(quarterTempos(ordered, rescale), bars);
  return ok({ bars, tempoMap, tracks, lengthTicks, ...(key ? { key } : {}) });
}

/**
 * The notes as a Standard MIDI File of format 1 with 480 ticks a quarter: first a track with key,
 * meters, tempos and a marker for each section, then one track for each part that plays (hands on
 * piano, click and drums on channel 10, see `INSTRUMENTS`). A count-in before tick 0 moves
 * everything later by whole bars of the first meter; the file's bar 1 is then the count-in's. A key
 * struck again before its note ends is let go at that moment. `pedals` are written as the sustaining
 * pedal of both hands' tracks (controller 64), their notes as long as given. Throws on notes that MIDI cannot
 * hold: key numbers outside 0…127, velocities outside 1…127.
 */
export function encodeMidi(
  notes: readonly Note[],
  timeline: Timeline,
  tempoMap: TempoMap,
  key?: Key,
  pedals: readonly PedalSpan[] = [],
): Uint8Array<ArrayBuffer> {
  const wrong = notes.find(
    ({ keyNumber, velocity }) =>
      !(keyNumber >= 0 && keyNumber <= 127 && velocity >= 1 && velocity <= 127),
  );
  if (wrong) throw new Error(`no MIDI note: ${JSON.stringify(wrong)}`);
  const leadIn = leadInTicks(notes, timeline);
  const tracks = [
    conductorEvents(timeline, tempoMap, leadIn, key),
    ...partTracks(notes, leadIn, pedals),
  ];
  const header = { format: 1, numTracks: tracks.length, ticksPerBeat: TICKS_PER_QUARTER } as const;
  return Uint8Array.from(writeMidi({ header, tracks }));
}
