import { expect, it } from 'vitest';
import type { Taught } from '../../src/app/midiCommands.ts';
import { createMidiDoor, type MidiKey } from '../../src/app/midiDoor.ts';
import { triggerText } from '../../src/app/midiTrigger.ts';
import { fakeMidi, fakePort } from '../support/midiPort.ts';

const SOFT_PLAYS: Taught = { 'play-or-stop': { kind: 'control', controller: 67 } };

/** A door to one piano; everything that comes through it is written down. */
function doorTo(taught: Taught = {}, isRefused: () => boolean = () => false) {
  const piano = fakePort('piano');
  const access = fakeMidi(piano);
  let asked = 0;
  const door = createMidiDoor({
    taught: () => taught,
    request: async () => {
      asked++;
      if (isRefused()) throw new DOMException('no', 'NotAllowedError');
      return access;
    },
  });
  const told: string[] = [];
  const keys: MidiKey[] = [];
  door.onCommand((command) => told.push(command));
  door.onPress((trigger) => told.push(triggerText(trigger)));
  door.onKey((key) => keys.push(key));
  return { door, piano, access, told, keys, asked: () => asked };
}

it('asks the browser for MIDI once, and not before somebody wants it', async () => {
  const { door, asked } = doorTo();
  expect([asked(), door.state()]).toEqual([0, { status: 'closed' }]);
  const opening = Promise.all([door.open(), door.openPlayed()]);
  expect(door.state()).toEqual({ status: 'asking' });
  await opening;
  await door.open();
  expect([asked(), door.state()]).toEqual([1, { status: 'open', names: ['piano'] }]);
});

it('says that it was refused, and asks again where it is wanted again', async () => {
  let isRefused = true;
  const { door, asked } = doorTo({}, () => isRefused);
  await door.open();
  expect(door.state()).toEqual({ status: 'refused', problem: { kind: 'denied' } });
  isRefused = false;
  await door.open();
  expect([asked(), door.state().status]).toEqual([2, 'open']);
});

it('tells which instruments are there as they come and go', async () => {
  const { door, piano, access } = doorTo();
  await door.open();
  const seen: unknown[] = [];
  const stop = door.subscribe(() => seen.push(door.state()));
  access.plugIn(fakePort('pads'));
  piano.unplug();
  access.dispatchEvent(new Event('statechange'));
  stop();
  access.plugIn(fakePort('third'));
  expect(seen).toEqual([
    { status: 'open', names: ['piano', 'pads'] },
    { status: 'open', names: ['pads'] },
  ]);
});

it('tells the keys of what is played, with how hard and when', async () => {
  const { door, piano, keys } = doorTo();
  await door.open();
  piano.say([0x90, 60, 127], 1000);
  piano.say([0x80, 60, 0], 1300);
  piano.say([0xb0, 64, 127], 1400);
  expect(keys).toEqual([
    { kind: 'down', keyNumber: 60, strength: 1, atMs: 1000 },
    { kind: 'up', keyNumber: 60, atMs: 1300 },
  ]);
});

it('gives a taught command at each press, and tells everything that is pressed', async () => {
  const { door, piano, told } = doorTo(SOFT_PLAYS);
  await door.open();
  piano.say([0xb0, 67, 127], 1000);
  piano.say([0xb0, 67, 0], 1200);
  piano.say([0xb0, 66, 127], 1400);
  piano.say([0xb0, 67, 127], 1600);
  expect(told).toEqual(['control 67', 'play-or-stop', 'control 66', 'control 67', 'play-or-stop']);
});

it('plays no key that is taught, neither down nor up nor bouncing', async () => {
  const { door, piano, keys, told } = doorTo({ faster: { kind: 'key', keyNumber: 21 } });
  await door.open();
  piano.say([0x90, 21, 80], 1000);
  piano.say([0x90, 21, 20], 1020);
  piano.say([0x80, 21, 0], 1100);
  piano.say([0x90, 22, 80], 1200);
  expect(keys).toMatchObject([{ keyNumber: 22 }]);
  expect(told).toEqual(['key 21', 'faster', 'key 22']);
});
