import type { MidiAccess, MidiPort } from '../../src/input/midiInput.ts';

/** A MIDI device that says what a test makes it say. */
export type FakePort = MidiPort & {
  readonly say: (bytes: readonly number[], timeStampMs: number) => void;
  readonly unplug: () => void;
  readonly plugIn: () => void;
};

/** A device called `name`; one that is taken cannot be opened until it was plugged in anew. */
export function fakePort(name: string, isTaken = false): FakePort {
  const plugged: { state: MidiPort['state'] } = { state: 'connected' };
  let cannotOpen = isTaken;
  const port = Object.assign(new EventTarget(), plugged, {
    name,
    open: async () => {
      if (cannotOpen) throw new DOMException('in use', 'InvalidAccessError');
    },
    say(bytes: readonly number[], timeStampMs: number) {
      const event = new Event('midimessage');
      Object.defineProperty(event, 'timeStamp', { value: timeStampMs });
      Object.defineProperty(event, 'data', { value: Uint8Array.from(bytes) });
      port.dispatchEvent(event);
    },
    unplug() {
      port.state = 'disconnected';
    },
    plugIn() {
      port.state = 'connected';
      cannotOpen = false;
    },
  });
  return port;
}

/** Access to such devices; `plugIn` connects one more. */
export function fakeMidi(...ports: FakePort[]): MidiAccess & { plugIn: (port: FakePort) => void } {
  const inputs = new Map<string, MidiPort>(ports.map((port) => [port.name ?? '', port]));
  const target = new EventTarget();
  return Object.assign(target, {
    inputs,
    plugIn(port: FakePort) {
      inputs.set(port.name ?? '', port);
      target.dispatchEvent(new Event('statechange'));
    },
  });
}
