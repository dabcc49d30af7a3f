import { type MidiEvent, parseMidi } from 'midi-file';
import { err, ok, type Result } from '../core/result.ts';
import type { MidiError, TrackChunk } from './midiChunks.ts';

/** An event and its time in the file's own ticks from the start. */
export type TimedEvent = { readonly tick: number; readonly event: MidiEvent };

type FieldRange = readonly [field: string, lowest: number, highest: number];

/** Ranges of the fields that are used; midi-file passes on whatever it finds, NaN included. */
const RANGES: Readonly<Record<string, readonly FieldRange[]>> = {
  noteOn: [
    ['noteNumber', 0, 127],
    ['velocity', 1, 127],
  ],
  noteOff: [['noteNumber', 0, 127]],
  programChange: [['programNumber', 0, 127]],
  setTempo: [['microsecondsPerBeat', 1, 0xffffff]],
  timeSignature: [['numerator', 0, 255]],
  keySignature: [
    ['key', -128, 127],
    ['scale', 0, 255],
  ],
};

const LONGEST_DELTA = 0x0fffffff;

/** A one-track file around the chunk: midi-file reads files, not chunks. */
function asFile(chunk: TrackChunk): Uint8Array {
  const size = chunk.bytes.length;
  const head = [0x4d, 0x54, 0x68, 0x64, 0, 0, 0, 6, 0, 0, 0, 1, 0, 96, 0x4d, 0x54, 0x72, 0x6b];
  const file = new Uint8Array(head.length + 4 + size);
  file.set(head);
  new DataView(file.buffer).setUint32(head.length, size);
  file.set(chunk.bytes, head.length + 4);
  return file;
}

/** The bytes as midi-file reads them, telling `reached` of every place it looks at. */
function watched(
  bytes: Uint8Array,
  base: number,
  reached: (at: number) => void,
): ArrayLike<number> {
  return new Proxy(bytes, {
    get(target, property) {
      if (property === 'slice')
        return (from: number, to: number) => {
          reached(base + from);
          return watched(target.slice(from, to), base + from, reached);
        };
      const index = typeof property === 'string' ? Number(property) : Number.NaN;
      if (!Number.isInteger(index)) return Reflect.get(target, property, target);
      reached(base + index);
      return target[index];
    },
  });
}

/** Where midi-file stops reading a track that it cannot read, as a byte of the whole file. */
function stopsAt(chunk: TrackChunk): number {
  const file = asFile(chunk);
  let last = 0;
  try {
    parseMidi(watched(file, 0, (at) => (last = at)));
  } catch {
    // The place it had reached is what is asked for.
  }
  return chunk.at + Math.max(0, last - (file.length - chunk.bytes.length));
}

function wrongField(event: MidiEvent): string | undefined {
  const delta: FieldRange = ['deltaTime', 0, LONGEST_DELTA];
  const fields = new Map<string, unknown>(Object.entries(event));
  const wrong = [delta, ...(RANGES[event.type] ?? [])].find(([field, lowest, highest]) => {
    const value = fields.get(field);
    return !(
      typeof value === 'number' &&
      Number.isInteger(value) &&
      value >= lowest &&
      value <= highest
    );
  });
  return wrong && `${event.type} ${wrong[0]} ${String(fields.get(wrong[0]))}`;
}

/** All events of one track with their times; the first wrong one is an error. */
export function readEvents(chunk: TrackChunk, track: number): Result<TimedEvent[], MidiError> {
  let events: readonly MidiEvent[];
  try {
    events = parseMidi(asFile(chunk)).tracks[0] ?? [];
  } catch (problem) {
    return err({ kind: 'bad-event', at: stopsAt(chunk), track, text: String(problem) });
  }
  let tick = 0;
  const timed: TimedEvent[] = [];
  for (const event of events) {
    const wrong = wrongField(event);
    if (wrong !== undefined) return err({ kind: 'bad-event', at: chunk.at, track, text: wrong });
    tick += event.deltaTime;
    timed.push({ tick, event });
  }
  return ok(timed);
}

/** Text of an event: midi-file keeps one character a byte; UTF-8 where it is, otherwise Latin-1. */
export function textOf(raw: string): string {
  const bytes = Uint8Array.from(raw, (character) => character.charCodeAt(0) & 0xff);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return raw;
  }
}

/** The same text for writing: one character for each of its UTF-8 bytes. */
export function rawText(text: string): string {
  return Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join('');
}
