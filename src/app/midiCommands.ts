import { keptTrigger, type MidiTrigger, triggerText } from './midiTrigger.ts';

/**
 * What an instrument can be taught. `on`, `back` and `start` lead through the sections of a song that
 * plays, and through the rungs of a drill.
 */
export const MIDI_COMMANDS = [
  'play-or-stop',
  'start',
  'on',
  'back',
  'slower',
  'faster',
  'click',
] as const;

export type MidiCommand = (typeof MIDI_COMMANDS)[number];

/** What on the instrument gives which command; nothing gives two. */
export type Taught = Readonly<Partial<Record<MidiCommand, MidiTrigger>>>;

/** The command that something on the instrument gives, if it was taught one. */
export function commandTaught(taught: Taught, trigger: MidiTrigger): MidiCommand | undefined {
  const text = triggerText(trigger);
  return MIDI_COMMANDS.find((command) => {
    const own = taught[command];
    return own && triggerText(own) === text;
  });
}

/** What is taught once a command has nothing that gives it. */
export function forgotten(taught: Taught, command: MidiCommand): Taught {
  return Object.fromEntries(Object.entries(taught).filter(([each]) => each !== command));
}

/**
 * What is taught once something gives a command: in place of what gave it before, and no longer the
 * command that it gave before (`commandTaught` tells which that was).
 */
export function taughtWith(taught: Taught, command: MidiCommand, trigger: MidiTrigger): Taught {
  const before = commandTaught(taught, trigger);
  return { ...(before ? forgotten(taught, before) : taught), [command]: trigger };
}

/** What was kept of what was taught; what can't be read, or would give two commands, is left out. */
export function keptTaught(kept: unknown): Taught {
  const read = Object(kept) as Record<string, unknown>;
  return MIDI_COMMANDS.reduce<Taught>((taught, command) => {
    const trigger = keptTrigger(read[command]);
    return trigger && !commandTaught(taught, trigger) ? { ...taught, [command]: trigger } : taught;
  }, {});
}
