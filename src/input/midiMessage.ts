import type { KeyNumber } from '../core/harmony/pitch.ts';

/** What a MIDI device says, as far as it concerns practice; `channel` counts from 0, values go from 0 to 127. */
export type MidiMessage =
  | {
      readonly kind: 'note-on';
      readonly channel: number;
      readonly keyNumber: KeyNumber;
      /** 1 to 127. */
      readonly velocity: number;
    }
  | { readonly kind: 'note-off'; readonly channel: number; readonly keyNumber: KeyNumber }
  | {
      readonly kind: 'control';
      readonly channel: number;
      readonly controller: number;
      readonly value: number;
    }
  | { readonly kind: 'program'; readonly channel: number; readonly program: number };

/**
 * Reads one message as Web MIDI gives it (whole, with its status byte). A note-on of velocity 0 is a
 * note-off (MIDI 1.0). Undefined for any other message and for bytes that are none.
 */
export function readMidiMessage(data: Uint8Array | null | undefined): MidiMessage | undefined {
  const [status, first, second] = data ?? [];
  if (status === undefined || !isValue(first)) return undefined;
  const channel = status & 0x0f;
  const kind = status & 0xf0;
  if (kind === 0xc0) return { kind: 'program', channel, program: first };
  if (!isValue(second)) return undefined;
  switch (kind) {
    case 0x80:
      return { kind: 'note-off', channel, keyNumber: first };
    case 0x90:
      return second === 0
        ? { kind: 'note-off', channel, keyNumber: first }
        : { kind: 'note-on', channel, keyNumber: first, velocity: second };
    case 0xb0:
      return { kind: 'control', channel, controller: first, value: second };
    default:
      return undefined;
  }
}

function isValue(byte: number | undefined): byte is number {
  return byte !== undefined && byte < 0x80;
}
