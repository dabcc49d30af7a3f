import { err, ok, type Result } from '../core/result.ts';

/**
 * Why a file is not read. `at` is a byte of the file, counted from 0; `track` counts the file's
 * tracks from 0. `bad-event`: bytes that are no MIDI event, or a value out of its range (then `at`
 * is the track's first byte). `independent-sequences`: format 2, several pieces in one file.
 */
export type MidiError =
  | { readonly kind: 'not-midi'; readonly at: number }
  | { readonly kind: 'bad-header'; readonly at: number; readonly text: string }
  | { readonly kind: 'smpte-division'; readonly at: number; readonly framesPerSecond: number }
  | { readonly kind: 'independent-sequences'; readonly at: number }
  | { readonly kind: 'cut-off'; readonly at: number; readonly track: number }
  | {
      readonly kind: 'bad-event';
      readonly at: number;
      readonly track: number;
      readonly text: string;
    }
  | { readonly kind: 'no-notes' }
  | { readonly kind: 'too-long'; readonly bars: number };

/** The bytes of one track's events, `at` their place in the file. */
export type TrackChunk = { readonly at: number; readonly bytes: Uint8Array };

/** A Standard MIDI File taken apart: ticks per quarter note and the tracks, events still as bytes. */
export type MidiChunks = {
  readonly ticksPerQuarter: number;
  readonly tracks: readonly TrackChunk[];
};

const HEADER_BYTES = 6;

function idAt(view: DataView, at: number): string {
  if (at + 4 > view.byteLength) return '';
  return String.fromCharCode(...Array.from({ length: 4 }, (_, i) => view.getUint8(at + i)));
}

/** Where the MIDI file begins: at 0, or inside the `data` chunk of a RIFF wrapper of kind RMID. */
function startOfMidi(view: DataView): number | undefined {
  if (idAt(view, 0) === 'MThd') return 0;
  if (idAt(view, 0) !== 'RIFF' || idAt(view, 8) !== 'RMID') return undefined;
  let at = 12;
  while (at + 8 <= view.byteLength) {
    if (idAt(view, at) === 'data' && idAt(view, at + 8) === 'MThd') return at + 8;
    const size = view.getUint32(at + 4, true);
    at += 8 + size + (size % 2);
  }
  return undefined;
}

type Header = {
  readonly ticksPerQuarter: number;
  readonly trackCount: number;
  readonly endsAt: number;
};

function readHeader(view: DataView, start: number): Result<Header, MidiError> {
  if (start + 8 + HEADER_BYTES > view.byteLength)
    return err({ kind: 'bad-header', at: view.byteLength, text: 'the header is cut off' });
  const size = view.getUint32(start + 4);
  if (size < HEADER_BYTES)
    return err({ kind: 'bad-header', at: start + 4, text: `header length ${size}` });
  const format = view.getUint16(start + 8);
  if (format === 2) return err({ kind: 'independent-sequences', at: start + 8 });
  if (format > 2) return err({ kind: 'bad-header', at: start + 8, text: `format ${format}` });
  const division = view.getInt16(start + 12);
  if (division < 0)
    return err({ kind: 'smpte-division', at: start + 12, framesPerSecond: -(division >> 8) });
  if (division === 0) return err({ kind: 'bad-header', at: start + 12, text: 'division 0' });
  return ok({
    ticksPerQuarter: division,
    trackCount: view.getUint16(start + 10),
    endsAt: start + 8 + size,
  });
}

/**
 * Takes a Standard MIDI File of format 0 or 1 apart, as it is or in a RIFF wrapper. Chunks of an
 * unknown kind are passed over; a track that the header does not count is read all the same.
 */
export function readChunks(bytes: Uint8Array): Result<MidiChunks, MidiError> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const start = startOfMidi(view);
  if (start === undefined) return err({ kind: 'not-midi', at: 0 });
  const header = readHeader(view, start);
  if (!header.ok) return header;
  const tracks: TrackChunk[] = [];
  let at = header.value.endsAt;
  while (at + 8 <= bytes.length) {
    const end = at + 8 + view.getUint32(at + 4);
    if (idAt(view, at) === 'MTrk') {
      if (end > bytes.length)
        return err({ kind: 'cut-off', at: bytes.length, track: tracks.length });
      tracks.push({ at: at + 8, bytes: bytes.subarray(at + 8, end) });
    }
    at = end;
  }
  if (tracks.length < header.value.trackCount)
    return err({ kind: 'cut-off', at: bytes.length, track: tracks.length });
  return ok({ ticksPerQuarter: header.value.ticksPerQuarter, tracks });
}
