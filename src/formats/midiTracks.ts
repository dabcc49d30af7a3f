import type { BandNote, BandTrack } from '../core/rhythm/band.ts';
import { guessRole } from '../core/rhythm/trackRole.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../core/time/ticks.ts';
import { type TimedEvent, textOf } from './midiEvents.ts';

/** General MIDI's percussion channel, 10 as musicians count. */
export const DRUM_CHANNEL = 9;

/** The file's ticks as ours, to the nearest whole one. */
export type Rescale = (fileTick: number) => Ticks;

/** Rescaling from so many ticks to the quarter. */
export function rescaleFrom(ticksPerQuarter: number): Rescale {
  return (fileTick) => Math.round((fileTick * TICKS_PER_QUARTER) / ticksPerQuarter);
}

type ProgramChange = { readonly tick: number; readonly channel: number; readonly program: number };

type SoundingNote = { readonly tick: number; readonly velocity: number };

/** Program changes hold for their channel in every track, so they are read from all of them first. */
function programChanges(tracks: readonly (readonly TimedEvent[])[]): ProgramChange[] {
  return tracks
    .flatMap((events) =>
      events.flatMap(({ tick, event }) =>
        event.type === 'programChange'
          ? [{ tick, channel: event.channel, program: event.programNumber }]
          : [],
      ),
    )
    .toSorted((a, b) => a.tick - b.tick);
}

function programAt(changes: readonly ProgramChange[], channel: number, tick: number): number {
  const own = changes.filter((change) => change.channel === channel);
  return (own.findLast((change) => change.tick <= tick) ?? own[0])?.program ?? 0;
}

/**
 * The notes of one channel. A key struck again while it sounds starts another note; each end of
 * the key ends the oldest that still sounds. What is never ended lasts to the track's end.
 */
function notesOf(events: readonly TimedEvent[], channel: number, rescale: Rescale): BandNote[] {
  const sounding = new Map<number, SoundingNote[]>();
  const notes: BandNote[] = [];
  const finish = (keyNumber: number, endTick: number) => {
    const start = sounding.get(keyNumber)?.shift();
    if (!start) return;
    const startTick = rescale(start.tick);
    const durationTicks = Math.max(1, rescale(endTick) - startTick);
    notes.push({ startTick, durationTicks, keyNumber, velocity: start.velocity });
  };
  for (const { tick, event } of events) {
    if (event.type === 'noteOn' && event.channel === channel) {
      const open = sounding.get(event.noteNumber) ?? [];
      sounding.set(event.noteNumber, [...open, { tick, velocity: event.velocity }]);
    }
    if (event.type === 'noteOff' && event.channel === channel) finish(event.noteNumber, tick);
  }
  const endTick = events.at(-1)?.tick ?? 0;
  for (const [keyNumber, open] of sounding)
    for (let left = open.length; left > 0; left--) finish(keyNumber, endTick);
  return notes.toSorted((a, b) => a.startTick - b.startTick || a.keyNumber - b.keyNumber);
}

function firstNoteTick(events: readonly TimedEvent[], channel: number): number {
  const first = events.find(({ event }) => event.type === 'noteOn' && event.channel === channel);
  return first?.tick ?? 0;
}

function channelsOf(events: readonly TimedEvent[]): number[] {
  const channels = events.flatMap(({ event }) => (event.type === 'noteOn' ? [event.channel] : []));
  return [...new Set(channels)].toSorted((a, b) => a - b);
}

function nameOf(events: readonly TimedEvent[]): string {
  const raw = events.flatMap(({ event }) => (event.type === 'trackName' ? [event.text] : []));
  return textOf(raw[0] ?? '').trim();
}

/** The band's tracks: one for every channel with notes in every track of the file, in file order. */
export function bandTracks(
  tracks: readonly (readonly TimedEvent[])[],
  rescale: Rescale,
): BandTrack[] {
  const changes = programChanges(tracks);
  return tracks.flatMap((events) =>
    channelsOf(events).map((channel) => {
      const track = {
        name: nameOf(events),
        channel,
        program: programAt(changes, channel, firstNoteTick(events, channel)),
        isDrums: channel === DRUM_CHANNEL,
        notes: notesOf(events, channel, rescale),
      };
      return { ...track, guess: guessRole(track) };
    }),
  );
}
