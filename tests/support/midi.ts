/** Standard MIDI Files written byte by byte for tests, apart from the code that is tested [SMF]. */

/** One event of a track: its time in the file's ticks and its bytes without the delta time. */
export type MidiTestEvent = { readonly at: number; readonly bytes: readonly number[] };

export type MidiTestFile = {
  readonly format?: number;
  readonly division?: number;
  readonly tracks: readonly (readonly MidiTestEvent[])[];
};

/** Bytes written in hexadecimal; spaces and bars between them do not matter. */
export function hexBytes(text: string): Uint8Array {
  const digits = text.replaceAll(/[\s|]/g, '');
  return Uint8Array.from(digits.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}

/** Bytes as upper-case hexadecimal without spaces. */
export function hexText(bytes: ArrayLike<number>): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0').toUpperCase()).join('');
}

/** A variable-length quantity: seven bits a byte, the high bit set on all but the last. */
export function variableLength(value: number): number[] {
  const rest = Math.floor(value / 128);
  const last = value % 128;
  return rest === 0 ? [last] : [...variableLength(rest).map((byte) => byte | 0x80), last];
}

function bigEndian(value: number, bytes: number): number[] {
  return Array.from({ length: bytes }, (_, i) => Math.floor(value / 256 ** (bytes - 1 - i)) % 256);
}

function meta(at: number, type: number, data: readonly number[]): MidiTestEvent {
  return { at, bytes: [0xff, type, ...variableLength(data.length), ...data] };
}

export function trackName(name: string, at = 0): MidiTestEvent {
  return meta(at, 0x03, [...new TextEncoder().encode(name)]);
}

export function tempoOf(microseconds: number, at = 0): MidiTestEvent {
  return meta(at, 0x51, bigEndian(microseconds, 3));
}

/** `beats` over `unit`; the click is on every quarter. */
export function meterOf(beats: number, unit: number, at = 0): MidiTestEvent {
  return meta(at, 0x58, [beats, Math.log2(unit), 24, 8]);
}

export function keySignature(fifths: number, minor: 0 | 1, at = 0): MidiTestEvent {
  return meta(at, 0x59, [fifths & 0xff, minor]);
}

/** `channel` from 0 as sent. */
export function program(channel: number, number: number, at = 0): MidiTestEvent {
  return { at, bytes: [0xc0 | channel, number] };
}

export type MidiTestNote = {
  readonly channel?: number;
  readonly key: number;
  readonly at: number;
  readonly length?: number;
  readonly velocity?: number;
};

/** Note-on and note-off, with status bytes. */
export function note({
  channel = 0,
  key,
  at,
  length = 60,
  velocity = 80,
}: MidiTestNote): MidiTestEvent[] {
  return [
    { at, bytes: [0x90 | channel, key, velocity] },
    { at: at + length, bytes: [0x80 | channel, key, 64] },
  ];
}

/**
 * Notes of one key where the text has an `x` (plain), `X` (loud) or `o` (soft); any other sign is a
 * step without a note; spaces and bar lines do not count. The text is repeated `times` over.
 */
export function gridNotes(
  text: string,
  stepTicks: number,
  { times = 1, ...sound }: { times?: number } & Omit<MidiTestNote, 'at' | 'velocity'>,
): MidiTestEvent[] {
  const steps = text.replaceAll(/[\s|]/g, '').repeat(times);
  const velocities: Readonly<Record<string, number>> = { x: 80, X: 115, o: 40 };
  return steps.split('').flatMap((step, i) => {
    const velocity = velocities[step];
    return velocity === undefined ? [] : note({ ...sound, at: i * stepTicks, velocity });
  });
}

function chunk(id: string, data: readonly number[]): number[] {
  return [...new TextEncoder().encode(id), ...bigEndian(data.length, 4), ...data];
}

function trackBytes(events: readonly MidiTestEvent[]): number[] {
  let before = 0;
  const sorted = events.toSorted((a, b) => a.at - b.at);
  const body = sorted.flatMap(({ at, bytes }) => {
    const delta = variableLength(at - before);
    before = at;
    return [...delta, ...bytes];
  });
  return [...body, 0, 0xff, 0x2f, 0];
}

/** A whole file; format 1 and 480 ticks a quarter where not said. */
export function midiFile({ format = 1, division = 480, tracks }: MidiTestFile): Uint8Array {
  return Uint8Array.from([
    ...chunk('MThd', [
      ...bigEndian(format, 2),
      ...bigEndian(tracks.length, 2),
      ...bigEndian(division, 2),
    ]),
    ...tracks.flatMap((events) => chunk('MTrk', trackBytes(events))),
  ]);
}
