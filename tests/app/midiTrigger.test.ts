import { describe, expect, it } from 'vitest';
import {
  keptTrigger,
  type MidiTrigger,
  PEDALS,
  pressReader,
  triggerText,
} from '../../src/app/midiTrigger.ts';
import { readMidiMessage } from '../../src/input/midiMessage.ts';

/** What was pressed with each of some messages, each given as its time in ms and its bytes. */
function pressedWith(...messages: readonly (readonly number[])[]): (string | undefined)[] {
  const read = pressReader();
  return messages.map(([atMs = 0, ...bytes]) => {
    const message = readMidiMessage(Uint8Array.from(bytes));
    const trigger = message && read(message, atMs);
    return trigger && triggerText(trigger);
  });
}

// Controllers 64, 66 and 67 are sustain, sostenuto and soft; on from 64 up (MIDI 1.0, from memory).
describe('a press', () => {
  it('of a key is its note-on, on whatever channel', () =>
    expect(pressedWith([0, 0x90, 108, 40], [80, 0x80, 108, 0], [900, 0x93, 108, 99])).toEqual([
      'key 108',
      undefined,
      'key 108',
    ]));

  // General MIDI plays drums on channel 10 (from memory).
  it('of a pad is not that of the key of its number', () =>
    expect(pressedWith([0, 0x99, 36, 90], [10, 0x90, 36, 90])).toEqual(['pad 36', 'key 36']));

  it('of a pedal is its coming up to 64, once until it was let go', () =>
    expect(
      pressedWith(
        [0, 0xb0, PEDALS.soft, 30],
        [10, 0xb0, PEDALS.soft, 64],
        [200, 0xb0, PEDALS.soft, 127],
        [400, 0xb0, PEDALS.soft, 60],
        [600, 0xb0, PEDALS.soft, 70],
        [800, 0xb0, PEDALS.soft, 0],
        [1000, 0xb0, PEDALS.soft, 127],
      ),
    ).toEqual([undefined, 'control 67', undefined, undefined, undefined, undefined, 'control 67']));

  it('of a switch that never says it was let go is each of its messages', () =>
    expect(pressedWith([0, 0xb0, 80, 127], [300, 0xb0, 80, 127])).toEqual([
      'control 80',
      'control 80',
    ]));

  it('that is sent on two channels, or bounces, is one', () =>
    expect(
      pressedWith(
        [0, 0xb0, 66, 80],
        [1, 0xb1, 66, 80],
        [400, 0xb0, 66, 90],
        [401, 0xb1, 66, 90],
        [500, 0x90, 60, 90],
        [540, 0x90, 60, 30],
        [700, 0x90, 60, 90],
      ),
    ).toEqual(['control 66', undefined, undefined, undefined, 'key 60', undefined, 'key 60']));

  it('of a foot switch may be a change of program', () =>
    expect(pressedWith([0, 0xc0, 4])).toEqual(['program 4']));

  // Bank select is 0 and 32, parameters 98 to 101, channel mode from 120 up (MIDI 1.0, from memory).
  it.each([0, 32, 6, 98, 101, 120, 122, 127])('is none of controller %i', (controller) =>
    expect(pressedWith([0, 0xb0, controller, 127])).toEqual([undefined]),
  );
});

describe('a trigger that was kept', () => {
  it.each<MidiTrigger>([
    { kind: 'key', keyNumber: 0 },
    { kind: 'pad', keyNumber: 127 },
    { kind: 'control', controller: 67 },
    { kind: 'program', program: 12 },
  ])('comes back: %j', (trigger) =>
    expect(keptTrigger(JSON.parse(JSON.stringify(trigger)))).toEqual(trigger),
  );

  it.each([
    [undefined],
    [null],
    ['key'],
    [{ kind: 'key', keyNumber: 128 }],
    [{ kind: 'key', keyNumber: 1.5 }],
    [{ kind: 'control', controller: 121 }],
    [{ kind: 'program', keyNumber: 3 }],
    [{ kind: 'lever', controller: 3 }],
  ])('is none where it is %j', (kept) => expect(keptTrigger(kept)).toBeUndefined());
});
