import { err, ok, type Result } from '../core/result.ts';
import {
  type HitInput,
  hitTime,
  type InputError,
  inputError,
  listenTo,
  type Stop,
} from './hitInput.ts';
import { type MidiMessage, readMidiMessage } from './midiMessage.ts';

/** As much of a Web MIDI input port as is used here. `open` rejects where another program holds the device. */
export type MidiPort = EventTarget & {
  readonly name: string | null;
  readonly state: 'connected' | 'disconnected';
  readonly open: () => Promise<unknown>;
};

/** As much of Web MIDI's access as is used here; tests have one of their own. */
export type MidiAccess = EventTarget & { readonly inputs: ReadonlyMap<string, MidiPort> };

/** Asks the browser for access; `navigator.requestMIDIAccess` where there is one. */
export type RequestMidi = () => Promise<MidiAccess>;

/** All MIDI devices that are connected, and those that will be. */
export type MidiDevices = {
  /** Names of those connected now, without those that another program keeps for itself. */
  readonly names: () => string[];
  /** Tells each message of any device, with its time on the page's clock in milliseconds. */
  readonly listen: (onMessage: (message: MidiMessage, timeStampMs: number) => void) => Stop;
  /** Tells when a device comes or goes, or turns out to be taken. */
  readonly onChange: (listener: () => void) => Stop;
};

/** The browser's Web MIDI; undefined where it has none. */
export function browserMidi(): RequestMidi | undefined {
  if (typeof navigator === 'undefined' || !navigator.requestMIDIAccess) return undefined;
  return () => navigator.requestMIDIAccess();
}

/** Opens MIDI, which may ask the user. No device need be connected yet. */
export async function openMidi(
  request: RequestMidi | undefined = browserMidi(),
): Promise<Result<MidiDevices, InputError>> {
  if (!request) return err({ kind: 'unsupported' });
  try {
    return ok(devicesOf(await request()));
  } catch (error) {
    return err(inputError(error));
  }
}

function devicesOf(access: MidiAccess): MidiDevices {
  const taken = new Set<MidiPort>();
  const taking = new EventTarget();
  const usable = () =>
    [...access.inputs.values()].filter((port) => port.state === 'connected' && !taken.has(port));
  const open = (port: MidiPort) =>
    port.open().catch(() => {
      taken.add(port);
      taking.dispatchEvent(new Event('taken'));
    });
  return {
    names: () => usable().map((port) => port.name ?? ''),
    onChange(listener) {
      const stops = [
        listenTo(access, 'statechange', listener),
        listenTo(taking, 'taken', listener),
      ];
      return () => endAll(stops);
    },
    listen(onMessage) {
      const heard = new Map<MidiPort, Stop>();
      const listenToAll = () => {
        // What was unplugged is opened anew once it is back; another program may have let it go.
        for (const port of access.inputs.values())
          if (port.state === 'disconnected') {
            heard.get(port)?.();
            heard.delete(port);
            taken.delete(port);
          }
        for (const port of usable()) {
          if (heard.has(port)) continue;
          heard.set(port, listenToPort(port, onMessage));
          void open(port);
        }
      };
      listenToAll();
      const stopWatching = listenTo(access, 'statechange', listenToAll);
      return () => {
        endAll([stopWatching, ...heard.values()]);
        heard.clear();
      };
    },
  };
}

function endAll(stops: readonly Stop[]): void {
  for (const stop of stops) stop();
}

function listenToPort(
  port: MidiPort,
  onMessage: (message: MidiMessage, timeStampMs: number) => void,
): Stop {
  return listenTo(port, 'midimessage', ({ data, timeStamp }: MIDIMessageEvent) => {
    const message = readMidiMessage(data);
    if (message) onMessage(message, timeStamp);
  });
}

/** The keys of all MIDI devices; without a device it is an error, so that the user can be told. */
export function midiKeys(devices: MidiDevices): HitInput {
  return async (hearing) => {
    if (devices.names().length === 0) return err({ kind: 'no-device' });
    return ok(
      devices.listen((message, timeStampMs) => {
        if (message.kind !== 'note-on') return;
        const { keyNumber, velocity } = message;
        hearing.onHit({ atSec: hitTime(timeStampMs, hearing), keyNumber, velocity });
      }),
    );
  };
}
