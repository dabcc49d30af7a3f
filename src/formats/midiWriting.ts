import type { MidiEvent } from 'midi-file';
import { fifthsOf, type Key } from '../core/harmony/key.ts';
import type { Note, Part } from '../core/rhythm/note.ts';
import type { PedalSpan } from '../core/rhythm/pedal.ts';
import type { Timeline } from '../core/song/timeline.ts';
import { barTicks, sameMeter, tempoBeatTicks } from '../core/time/meter.ts';
import type { TempoMap } from '../core/time/tempoMap.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../core/time/ticks.ts';
import { rawText } from './midiEvents.ts';
import { microsecondsOf } from './midiTimes.ts';
import { DRUM_CHANNEL } from './midiTracks.ts';

/** An event at a tick of the written file; of those at one tick lower `order` comes first. */
type PlacedEvent = { readonly tick: Ticks; readonly order: number; readonly event: MidiEvent };

type Instrument = { readonly name: string; readonly channel: number; readonly program: number };

/**
 * Track name, channel and General MIDI program (both as sent, from 0) of every part: piano for the
 * hands, fingered bass, steel and clean guitar, "voice oohs" for the sung line (program names:
 * reference 1.1 and, for the voice, from memory); drums and click on the percussion channel.
 */
export const INSTRUMENTS: Readonly<Record<Part, Instrument>> = {
  right: { name: 'Right hand', channel: 0, program: 0 },
  left: { name: 'Left hand', channel: 1, program: 0 },
  bass: { name: 'Bass', channel: 2, program: 33 },
  picking: { name: 'Picking', channel: 3, program: 25 },
  strumming: { name: 'Strumming', channel: 4, program: 27 },
  sung: { name: 'Sung line', channel: 5, program: 53 },
  kick: { name: 'Kick', channel: DRUM_CHANNEL, program: 0 },
  snare: { name: 'Snare', channel: DRUM_CHANNEL, program: 0 },
  'hi-hat': { name: 'Hi-hat', channel: DRUM_CHANNEL, program: 0 },
  tom: { name: 'Toms', channel: DRUM_CHANNEL, program: 0 },
  cymbal: { name: 'Cymbals', channel: DRUM_CHANNEL, program: 0 },
  percussion: { name: 'Percussion', channel: DRUM_CHANNEL, program: 0 },
  click: { name: 'Click', channel: DRUM_CHANNEL, program: 0 },
};

const CLOCKS_PER_QUARTER = 24;

/**
 * How far everything is moved so that a count-in, which lies before tick 0, starts at or after the
 * file's start: whole bars of the first meter, so that bar lines stay bar lines. 0 without one.
 */
export function leadInTicks(notes: readonly Note[], timeline: Timeline): Ticks {
  const earliest = notes.reduce((least, note) => Math.min(least, note.startTick), 0);
  const firstBar = timeline.bars[0];
  const bar = firstBar ? barTicks(firstBar.meter) : 4 * TICKS_PER_QUARTER;
  return Math.ceil(-earliest / bar) * bar;
}

function inOrder(events: readonly PlacedEvent[], name: string): MidiEvent[] {
  let before = 0;
  const timed = events
    .toSorted((a, b) => a.tick - b.tick || a.order - b.order)
    .map(({ tick, event }) => {
      const deltaTime = tick - before;
      before = tick;
      return { ...event, deltaTime };
    });
  return [
    { deltaTime: 0, type: 'trackName', text: rawText(name) },
    ...timed,
    { deltaTime: 0, type: 'endOfTrack' },
  ];
}

function meterEvents(timeline: Timeline, leadIn: Ticks): PlacedEvent[] {
  return timeline.bars.flatMap(({ startTick, meter }, i) => {
    const before = timeline.bars[i - 1];
    if (before && sameMeter(before.meter, meter)) return [];
    const metronome = (tempoBeatTicks(meter) * CLOCKS_PER_QUARTER) / TICKS_PER_QUARTER;
    const event: MidiEvent = {
      deltaTime: 0,
      type: 'timeSignature',
      numerator: meter.beats,
      denominator: meter.unit,
      metronome,
      thirtyseconds: 8,
    };
    return [{ tick: i === 0 ? 0 : startTick + leadIn, order: 1, event }];
  });
}

function tempoEvents(tempoMap: TempoMap, leadIn: Ticks): PlacedEvent[] {
  return tempoMap.map(({ tick, tempo }, i) => ({
    tick: i === 0 ? 0 : tick + leadIn,
    order: 2,
    event: { deltaTime: 0, type: 'setTempo', microsecondsPerBeat: microsecondsOf(tempo) },
  }));
}

function keyEvents(key: Key | undefined): PlacedEvent[] {
  const fifths = key && fifthsOf(key);
  if (fifths === undefined || Math.abs(fifths) > 7) return [];
  const scale = key?.mode === 'minor' ? 1 : 0;
  return [{ tick: 0, order: 0, event: { deltaTime: 0, type: 'keySignature', key: fifths, scale } }];
}

function markerEvents(timeline: Timeline, leadIn: Ticks): PlacedEvent[] {
  return timeline.sections.map(({ startTick, name }) => ({
    tick: startTick + leadIn,
    order: 3,
    event: { deltaTime: 0, type: 'marker', text: rawText(name) },
  }));
}

/** The first track: key, meters, tempos, and a marker with its name at the start of each section. */
export function conductorEvents(
  timeline: Timeline,
  tempoMap: TempoMap,
  leadIn: Ticks,
  key: Key | undefined,
): MidiEvent[] {
  return inOrder(
    [
      ...keyEvents(key),
      ...meterEvents(timeline, leadIn),
      ...tempoEvents(tempoMap, leadIn),
      ...markerEvents(timeline, leadIn),
    ],
    '',
  );
}

/**
 * How long each note is held: a key struck again while it sounds is let go first, since the file
 * could not tell the two ends apart. `notes` ascend by start.
 */
function heldLengths(notes: readonly Note[]): Ticks[] {
  const nextStart = new Map<number, Ticks>();
  return notes
    .toReversed()
    .map(({ keyNumber, startTick, durationTicks }) => {
      const longest = (nextStart.get(keyNumber) ?? Number.POSITIVE_INFINITY) - startTick;
      nextStart.set(keyNumber, startTick);
      return Math.max(1, Math.min(durationTicks, longest));
    })
    .toReversed();
}

function noteEvents(notes: readonly Note[], channel: number, leadIn: Ticks): PlacedEvent[] {
  const lengths = heldLengths(notes);
  return notes.flatMap(({ startTick, keyNumber, velocity }, i): PlacedEvent[] => {
    const on = startTick + leadIn;
    const key = { deltaTime: 0, channel, noteNumber: keyNumber };
    return [
      { tick: on, order: 1, event: { ...key, type: 'noteOn', velocity } },
      { tick: on + lengths[i]!, order: 0, event: { ...key, type: 'noteOff', velocity: 0 } },
    ];
  });
}

/** Controller number of the sustaining pedal; 0 to 63 is up, 64 to 127 down (MIDI 1.0; from memory). */
const SUSTAIN = 64;

function pedalEvents(pedals: readonly PedalSpan[], channel: number, leadIn: Ticks): PlacedEvent[] {
  const sustain = (tick: Ticks, value: number): PlacedEvent => ({
    tick: tick + leadIn,
    order: 0,
    event: { deltaTime: 0, type: 'controller', channel, controllerType: SUSTAIN, value },
  });
  return pedals.flatMap(({ downTick, upTick }) => [sustain(downTick, 127), sustain(upTick, 0)]);
}

/**
 * One track for every part that has notes, in the order of `INSTRUMENTS`; those of the hands with
 * the pedal. Where it is let up and keys are struck at one tick, it is let up first.
 */
export function partTracks(
  notes: readonly Note[],
  leadIn: Ticks,
  pedals: readonly PedalSpan[],
): MidiEvent[][] {
  const parts = Object.keys(INSTRUMENTS) as Part[];
  return parts.flatMap((part) => {
    const own = notes
      .filter((note) => note.part === part)
      .toSorted((a, b) => a.startTick - b.startTick);
    if (own.length === 0) return [];
    const { name, channel, program } = INSTRUMENTS[part];
    const change: PlacedEvent = {
      tick: 0,
      order: -1,
      event: { deltaTime: 0, type: 'programChange', channel, programNumber: program },
    };
    const pedal = part === 'left' || part === 'right' ? pedalEvents(pedals, channel, leadIn) : [];
    return [inOrder([change, ...noteEvents(own, channel, leadIn), ...pedal], name)];
  });
}
