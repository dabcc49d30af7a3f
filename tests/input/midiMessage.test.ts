import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { readMidiMessage } from '../../src/input/midiMessage.ts';

// MIDI 1.0 channel messages: 8n note off, 9n note on, Bn control change, Cn program change (from memory).
it.each([
  [[0x90, 60, 100], { kind: 'note-on', channel: 0, keyNumber: 60, velocity: 100 }],
  [[0x9f, 127, 1], { kind: 'note-on', channel: 15, keyNumber: 127, velocity: 1 }],
  [[0x92, 60, 0], { kind: 'note-off', channel: 2, keyNumber: 60 }],
  [[0x80, 60, 64], { kind: 'note-off', channel: 0, keyNumber: 60 }],
  [[0xb0, 64, 127], { kind: 'control', channel: 0, controller: 64, value: 127 }],
  [[0xc5, 3], { kind: 'program', channel: 5, program: 3 }],
])('%j is %j', (bytes, message) =>
  expect(readMidiMessage(Uint8Array.from(bytes))).toEqual(message),
);

it.each([
  [[]],
  [[0x90]],
  [[0x90, 60]],
  [[0xfe]],
  [[0xe0, 0, 64]],
  [[60, 100, 0]],
  [[0x90, 200, 3]],
])('%j is none that is used here', (bytes) =>
  expect(readMidiMessage(Uint8Array.from(bytes))).toBeUndefined(),
);

it('no bytes are read wrongly', () =>
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 4 }), (bytes) => {
      const message = readMidiMessage(bytes);
      if (message?.kind !== 'note-on') return;
      expect(message.velocity).toBeGreaterThan(0);
      expect(message.velocity).toBeLessThan(128);
      expect(message.keyNumber).toBeLessThan(128);
    }),
  ));

it('no data at all is no message', () => expect(readMidiMessage(null)).toBeUndefined());
