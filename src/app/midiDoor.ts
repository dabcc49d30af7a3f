import type { KeyNumber } from '../core/harmony/pitch.ts';
import { ok, type Result } from '../core/result.ts';
import type { InputError, Stop } from '../input/hitInput.ts';
import { type MidiDevices, openMidi, type RequestMidi } from '../input/midiInput.ts';
import type { MidiMessage } from '../input/midiMessage.ts';
import { commandTaught, type MidiCommand, type Taught } from './midiCommands.ts';
import { type MidiTrigger, pressReader, triggerOf } from './midiTrigger.ts';

/** Whether MIDI instruments are heard: not asked for yet, being asked for, refused, or those that are connected. */
export type MidiState =
  | { readonly status: 'closed' }
  | { readonly status: 'asking' }
  | { readonly status: 'refused'; readonly problem: InputError }
  | { readonly status: 'open'; readonly names: readonly string[] };

/** A key of an instrument goes down or up, at a moment of the page's clock in milliseconds, as events are stamped. */
export type MidiKey =
  | {
      readonly kind: 'down';
      readonly keyNumber: KeyNumber;
      /** How hard, above 0 up to 1. */
      readonly strength: number;
      readonly atMs: number;
    }
  | { readonly kind: 'up'; readonly keyNumber: KeyNumber; readonly atMs: number };

/**
 * The one way to MIDI for all that hear it. Nothing is heard before `open` was called; what listens
 * may be there before. The functions need no `this`.
 */
export type MidiDoor = {
  readonly state: () => MidiState;
  readonly subscribe: (listener: () => void) => Stop;
  /** Asks the browser, which may ask the user; asked once, and again only after it was refused. */
  readonly open: () => Promise<void>;
  /** Opens it and gives the instruments, without what they are taught as commands. */
  readonly openPlayed: () => Promise<Result<MidiDevices, InputError>>;
  /** Tells the keys that are played, without those that are taught as commands. */
  readonly onKey: (listener: (key: MidiKey) => void) => Stop;
  /** Tells the taught commands as they are given. */
  readonly onCommand: (listener: (command: MidiCommand) => void) => Stop;
  /** Tells all that is pressed and could be taught. */
  readonly onPress: (listener: (trigger: MidiTrigger) => void) => Stop;
};

export type MidiDoorParts = {
  /** What is taught now. */
  readonly taught: () => Taught;
  /** Left out: the browser's own. */
  readonly request?: RequestMidi;
};

/** Listeners of one kind, told one after the other. */
function circle<Told extends readonly unknown[]>() {
  const listeners = new Set<(...told: Told) => void>();
  return {
    tell: (...told: Told) => {
      for (const listener of listeners) listener(...told);
    },
    join: (listener: (...told: Told) => void): Stop => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** See `MidiDoor`; made once. */
export function createMidiDoor({ taught, request }: MidiDoorParts): MidiDoor {
  const changes = circle<[]>();
  const played = circle<[MidiMessage, number]>();
  const commands = circle<[MidiCommand]>();
  const presses = circle<[MidiTrigger]>();
  const pressed = pressReader();
  let state: MidiState = { status: 'closed' };
  let opening: Promise<Result<MidiDevices, InputError>> | undefined;

  function show(next: MidiState): void {
    state = next;
    changes.tell();
  }

  function hear(message: MidiMessage, atMs: number): void {
    const source = triggerOf(message);
    // Asked before it is told, as what hears it may teach it or have it forgotten.
    const command = source && commandTaught(taught(), source);
    const press = pressed(message, atMs);
    if (press) presses.tell(press);
    if (press && command) commands.tell(command);
    if (!command) played.tell(message, atMs);
  }

  async function opened(): Promise<Result<MidiDevices, InputError>> {
    show({ status: 'asking' });
    const devices = await openMidi(request);
    if (!devices.ok) {
      opening = undefined;
      show({ status: 'refused', problem: devices.error });
      return devices;
    }
    const { names, listen, onChange } = devices.value;
    const showNames = () => show({ status: 'open', names: names() });
    listen(hear);
    onChange(showNames);
    showNames();
    return ok({ names, onChange, listen: played.join });
  }

  const openPlayed = () => (opening ??= opened());

  return {
    state: () => state,
    subscribe: changes.join,
    open: async () => void (await openPlayed()),
    openPlayed,
    onKey: (listener) =>
      played.join((message, atMs) => {
        const key = keyOf(message, atMs);
        if (key) listener(key);
      }),
    onCommand: commands.join,
    onPress: presses.join,
  };
}

function keyOf(message: MidiMessage, atMs: number): MidiKey | undefined {
  if (message.kind === 'note-off') return { kind: 'up', keyNumber: message.keyNumber, atMs };
  if (message.kind !== 'note-on') return undefined;
  return { kind: 'down', keyNumber: message.keyNumber, strength: message.velocity / 127, atMs };
}
