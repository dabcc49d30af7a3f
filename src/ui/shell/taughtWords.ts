import { commandTaught, type MidiCommand, type Taught } from '../../app/midiCommands.ts';
import { type MidiTrigger, PEDALS } from '../../app/midiTrigger.ts';
import { unreachable } from '../../core/result.ts';
import { plainKeyName } from '../parts/keyboard/noteNames.ts';

/** What each taught command does. */
export const COMMAND_WORDS: Readonly<Record<MidiCommand, string>> = {
  'play-or-stop': 'Play, or stop',
  start: 'Back to the section’s start; in a drill this rung again',
  on: 'Next section; in a drill the next rung',
  back: 'Section before; in a drill the rung before',
  slower: 'Slower',
  faster: 'Faster',
  click: 'Click on, or off',
};

/** Controllers that have a name of their own (MIDI 1.0). */
const CONTROLLER_NAMES: Readonly<Record<number, string>> = {
  1: 'Modulation wheel',
  4: 'Foot pedal',
  11: 'Expression pedal',
  [PEDALS.sustain]: 'Right pedal (sustain)',
  65: 'Portamento switch',
  [PEDALS.sostenuto]: 'Middle pedal (sostenuto)',
  [PEDALS.soft]: 'Left pedal (soft)',
};

/** What is pressed, as a player calls it: “Left pedal (soft)”, “Key C8” (middle C is C4). */
export function triggerWords(trigger: MidiTrigger): string {
  switch (trigger.kind) {
    case 'key':
      return `Key ${plainKeyName(trigger.keyNumber)}`;
    case 'pad':
      return `Pad ${trigger.keyNumber}`;
    case 'control':
      return CONTROLLER_NAMES[trigger.controller] ?? `Switch ${trigger.controller}`;
    case 'program':
      return `Foot switch, program ${trigger.program + 1}`;
    default:
      return unreachable(trigger);
  }
}

/** What there is to know about what was taught; undefined where it does no harm. */
export function cautionAbout(trigger: MidiTrigger): string | undefined {
  if (trigger.kind === 'key') return 'No longer counted as played.';
  return trigger.kind === 'control' && trigger.controller === PEDALS.sustain
    ? 'Take care: you play with this one, and each time it does this.'
    : undefined;
}

/** What has come of teaching: what gives the command now, and what it gave before, by what was taught until then. */
export function taughtSentence(command: MidiCommand, trigger: MidiTrigger, before: Taught): string {
  const other = commandTaught(before, trigger);
  const now = `${triggerWords(trigger)} is taken for “${COMMAND_WORDS[command]}”`;
  return other && other !== command
    ? `${now}; it no longer does “${COMMAND_WORDS[other]}”.`
    : `${now}.`;
}
