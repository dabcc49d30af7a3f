import { expect, it } from 'vitest';
import type { Taught } from '../../src/app/midiCommands.ts';
import { createMidiDoor } from '../../src/app/midiDoor.ts';
import { INPUT_KINDS, type Pads, takeInputs } from '../../src/app/takeInputs.ts';
import type { PlayedNote } from '../../src/core/practice/playedHits.ts';
import { err } from '../../src/core/result.ts';
import { fakeMidi, fakePort } from '../support/midiPort.ts';
import { errorOf, valueOf } from '../support/music.ts';

/** All inputs where there is no sound, with the pads and MIDI that a test gives. */
function inputs(parts: { pads?: Pads; midi?: ReturnType<typeof fakeMidi>; taught?: Taught } = {}) {
  return takeInputs({
    keyTarget: new EventTarget(),
    pads: () => parts.pads,
    openRoom: async () => err({ reason: 'no output' }),
    openMidi: createMidiDoor({
      taught: () => parts.taught ?? {},
      request: async () => {
        if (!parts.midi) throw new DOMException('no', 'NotAllowedError');
        return parts.midi;
      },
    }).openPlayed,
  });
}

function hearing(notes: PlayedNote[] = []) {
  return {
    outputTimestamp: () => ({ contextTime: 0, performanceTime: 0 }),
    latencySec: 0,
    onHit: (note: PlayedNote) => {
      notes.push(note);
    },
  };
}

it('tells of each input what it can see', () => {
  const all = inputs();
  expect(INPUT_KINDS.map((kind) => all[kind].sees)).toEqual(['hands', 'hands', 'keys', 'onsets']);
});

it('hears the pads that are on the page when it begins to listen', async () => {
  expect(errorOf(await inputs().pads.listen(hearing()))).toEqual({ kind: 'no-device' });
  const pads = { left: new EventTarget(), right: new EventTarget() };
  const notes: PlayedNote[] = [];
  const stop = valueOf(await inputs({ pads }).pads.listen(hearing(notes)));
  pads.right.dispatchEvent(new Event('pointerdown'));
  stop();
  pads.left.dispatchEvent(new Event('pointerdown'));
  expect(notes.map(({ hand }) => hand)).toEqual(['right']);
});

it('asks for MIDI when it begins to listen, and passes on what was answered', async () => {
  expect(errorOf(await inputs().midi.listen(hearing()))).toEqual({ kind: 'denied' });
  const none = inputs({ midi: fakeMidi() });
  expect(errorOf(await none.midi.listen(hearing()))).toEqual({ kind: 'no-device' });
  const one = inputs({ midi: fakeMidi(fakePort('piano')) });
  expect((await one.midi.listen(hearing())).ok).toBe(true);
});

it('does not take a key that is taught a command for a played one', async () => {
  const port = fakePort('piano');
  const notes: PlayedNote[] = [];
  const taught: Taught = { 'play-or-stop': { kind: 'key', keyNumber: 108 } };
  const stop = valueOf(await inputs({ midi: fakeMidi(port), taught }).midi.listen(hearing(notes)));
  port.say([0x90, 108, 90], 1000);
  port.say([0x90, 60, 90], 1000);
  stop();
  port.say([0x90, 62, 90], 1500);
  expect(notes.map(({ keyNumber }) => keyNumber)).toEqual([60]);
});

it('has no microphone without sound, whose clock it needs', async () => {
  const problem = errorOf(await inputs().microphone.listen(hearing()));
  expect(problem).toEqual({ kind: 'refused', text: 'no output' });
});
