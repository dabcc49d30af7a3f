import { describe, expect, it } from 'vitest';
import type { PlayedNote } from '../../src/core/practice/playedHits.ts';
import { type MidiDevices, midiKeys, openMidi } from '../../src/input/midiInput.ts';
import type { MidiMessage } from '../../src/input/midiMessage.ts';
import { fakeMidi, fakePort } from '../support/midiPort.ts';
import { errorOf, valueOf } from '../support/music.ts';

async function opened(access: ReturnType<typeof fakeMidi>): Promise<MidiDevices> {
  return valueOf(await openMidi(async () => access));
}

/** What the keys of the devices tell, where 5000 ms of the page is second 2 of what is heard. */
async function heardOf(devices: MidiDevices, latencySec = 0) {
  const hits: PlayedNote[] = [];
  const stop = valueOf(
    await midiKeys(devices)({
      outputTimestamp: () => ({ contextTime: 2, performanceTime: 5000 }),
      latencySec,
      onHit: (note) => hits.push(note),
    }),
  );
  return { hits, stop };
}

describe('the keys of a MIDI keyboard', () => {
  it('are hits at the time of what was heard, less the latency', async () => {
    const port = fakePort('piano');
    const { hits } = await heardOf(await opened(fakeMidi(port)), 0.03);
    port.say([0x90, 60, 100], 5100);
    port.say([0x80, 60, 0], 5200);
    port.say([0xb0, 64, 127], 5250);
    port.say([0x90, 64, 1], 4900);
    expect(hits).toEqual([
      { atSec: expect.closeTo(2.07, 12), keyNumber: 60, velocity: 100 },
      { atSec: expect.closeTo(1.87, 12), keyNumber: 64, velocity: 1 },
    ]);
  });

  it('are not heard any more after the end', async () => {
    const port = fakePort('piano');
    const { hits, stop } = await heardOf(await opened(fakeMidi(port)));
    stop();
    stop();
    port.say([0x90, 60, 100], 5100);
    expect(hits).toEqual([]);
  });

  it('of a device plugged in later are heard, too, each once', async () => {
    const access = fakeMidi(fakePort('piano'));
    const { hits } = await heardOf(await opened(access));
    const late = fakePort('pad');
    access.plugIn(late);
    access.plugIn(fakePort('third'));
    late.say([0x99, 36, 90], 5000);
    expect(hits).toHaveLength(1);
  });

  it('of a device that comes back are heard again, each once', async () => {
    const port = fakePort('piano');
    const access = fakeMidi(port);
    const { hits } = await heardOf(await opened(access));
    port.unplug();
    access.dispatchEvent(new Event('statechange'));
    port.say([0x90, 60, 100], 5000);
    port.plugIn();
    access.dispatchEvent(new Event('statechange'));
    access.dispatchEvent(new Event('statechange'));
    port.say([0x90, 62, 100], 5100);
    expect(hits.map(({ keyNumber }) => keyNumber)).toEqual([62]);
  });

  it('are not there without a device', async () => {
    const gone = fakePort('piano');
    gone.unplug();
    const devices = await opened(fakeMidi(gone));
    const hearing = {
      outputTimestamp: () => ({ contextTime: 0, performanceTime: 0 }),
      latencySec: 0,
      onHit: () => undefined,
    };
    expect(errorOf(await midiKeys(devices)(hearing))).toEqual({ kind: 'no-device' });
  });
});

describe('MIDI devices', () => {
  it('tell every message with the page’s time', async () => {
    const port = fakePort('piano');
    const messages: [MidiMessage, number][] = [];
    (await opened(fakeMidi(port))).listen((message, at) => messages.push([message, at]));
    port.say([0xb0, 67, 127], 123);
    expect(messages).toEqual([[{ kind: 'control', channel: 0, controller: 67, value: 127 }, 123]]);
  });

  it('that another program keeps are not among them', async () => {
    const devices = await opened(fakeMidi(fakePort('free'), fakePort('taken', true)));
    let changes = 0;
    devices.onChange(() => changes++);
    devices.listen(() => undefined);
    await Promise.resolve();
    await Promise.resolve();
    expect(devices.names()).toEqual(['free']);
    expect(changes).toBe(1);
  });

  it('that another program has let go are among them once they were plugged in again', async () => {
    const port = fakePort('piano', true);
    const access = fakeMidi(port);
    const devices = await opened(access);
    devices.listen(() => undefined);
    await Promise.resolve();
    await Promise.resolve();
    expect(devices.names()).toEqual([]);
    port.unplug();
    access.dispatchEvent(new Event('statechange'));
    port.plugIn();
    access.dispatchEvent(new Event('statechange'));
    await Promise.resolve();
    await Promise.resolve();
    expect(devices.names()).toEqual(['piano']);
  });

  it.each([
    ['NotAllowedError', { kind: 'denied' }],
    ['SecurityError', { kind: 'denied' }],
    ['NotSupportedError', { kind: 'unsupported' }],
    ['InvalidStateError', { kind: 'refused', text: 'InvalidStateError: why' }],
  ])('refused with %s are the error %j', async (name, error) => {
    const refuse = async () => {
      throw new DOMException('why', name);
    };
    expect(errorOf(await openMidi(refuse))).toEqual(error);
  });

  it('are none where the browser has no MIDI', async () =>
    expect(errorOf(await openMidi(undefined))).toEqual({ kind: 'unsupported' }));
});
