import { expect, it } from 'vitest';
import {
  commandTaught,
  forgotten,
  keptTaught,
  type Taught,
  taughtWith,
} from '../../src/app/midiCommands.ts';
import type { MidiTrigger } from '../../src/app/midiTrigger.ts';

const SOFT: MidiTrigger = { kind: 'control', controller: 67 };
const TOP: MidiTrigger = { kind: 'key', keyNumber: 108 };
const TAUGHT: Taught = { 'play-or-stop': SOFT, on: TOP };

it('finds the command of what was pressed', () => {
  expect(commandTaught(TAUGHT, { kind: 'control', controller: 67 })).toBe('play-or-stop');
  expect(commandTaught(TAUGHT, { kind: 'key', keyNumber: 107 })).toBeUndefined();
  expect(commandTaught(TAUGHT, { kind: 'pad', keyNumber: 108 })).toBeUndefined();
  expect(commandTaught({}, SOFT)).toBeUndefined();
});

it('lets a pedal give the command that it was taught last, and that one only', () =>
  expect(taughtWith(TAUGHT, 'faster', SOFT)).toEqual({ on: TOP, faster: SOFT }));

it('lets a command be given by what it was taught to last', () =>
  expect(taughtWith(TAUGHT, 'on', { kind: 'program', program: 1 })).toEqual({
    'play-or-stop': SOFT,
    on: { kind: 'program', program: 1 },
  }));

it('keeps what is taught again as it was', () =>
  expect(taughtWith(TAUGHT, 'on', TOP)).toEqual(TAUGHT));

it('forgets one command', () => expect(forgotten(TAUGHT, 'on')).toEqual({ 'play-or-stop': SOFT }));

it('comes back as it was kept, without what can’t be read', () => {
  expect(keptTaught(JSON.parse(JSON.stringify(TAUGHT)))).toEqual(TAUGHT);
  expect(keptTaught({ on: TOP, back: { kind: 'key' }, dance: SOFT })).toEqual({ on: TOP });
  expect(keptTaught({ on: TOP, back: TOP })).toEqual({ on: TOP });
  for (const kept of [undefined, null, 3, 'on', [TOP]]) expect(keptTaught(kept)).toEqual({});
});
