import type { LatencyProblem } from '../../../app/latencyCheck.ts';
import type { InputKind } from '../../../app/takeInputs.ts';
import type { SoundingHands } from '../../../core/practice/soundingHands.ts';
import { unreachable } from '../../../core/result.ts';

/** What each input is called, and what is to be known before it is used. */
export const INPUT_WORDS: Readonly<
  Record<InputKind, { readonly name: string; readonly hint: string }>
> = {
  keys: { name: 'two computer keys', hint: 'F is the left hand, J the right.' },
  pads: { name: 'two touch pads', hint: 'The pads stand under the pattern.' },
  midi: { name: 'a MIDI keyboard', hint: 'Connect and switch it on first.' },
  microphone: {
    name: 'the microphone',
    hint: 'Needs headphones: it would hear the tool as well. It hears when you strike, not which hand or key.',
  },
};

/** What the tool plays, by the hands that it sounds. */
export const TOOL_PLAYS: Readonly<Record<SoundingHands, string>> = {
  left: 'The tool plays the left hand.',
  right: 'The tool plays the right hand.',
  both: 'The tool plays both hands along with you.',
  none: 'The tool leaves both hands to you.',
};

type DeviceProblem = 'unsupported' | 'denied' | 'no-device';

const DEVICE_PROBLEMS: Readonly<Record<InputKind, Readonly<Record<DeviceProblem, string>>>> = {
  keys: {
    unsupported: 'This browser tells no keys.',
    denied: 'This browser tells no keys.',
    'no-device': 'There is no keyboard.',
  },
  pads: {
    unsupported: 'This browser tells no touches.',
    denied: 'This browser tells no touches.',
    'no-device': 'The pads are not on the page: they stand on Drill.',
  },
  midi: {
    unsupported: 'This browser has no MIDI. Use another browser, or the microphone.',
    denied:
      'The browser was not allowed to use MIDI. Allow it in the site’s settings, then try again.',
    'no-device': 'No MIDI keyboard is connected. Connect one, then try again.',
  },
  microphone: {
    unsupported: 'This browser gives no microphone to this page.',
    denied:
      'The browser was not allowed to use the microphone. Allow it in the site’s settings, then try again.',
    'no-device': 'No microphone is connected. Connect one, then try again.',
  },
};

/** Why the player is not heard, or a latency not known, and what to do. */
export function hearingSentence(problem: LatencyProblem, kind: InputKind): string {
  switch (problem.kind) {
    case 'unsupported':
    case 'denied':
    case 'no-device':
      return DEVICE_PROBLEMS[kind][problem.kind];
    case 'refused':
      return `The system refused ${INPUT_WORDS[kind].name} (${problem.text}). Close what else uses it, then try again.`;
    case 'lost':
      return `You are not heard any more: ${INPUT_WORDS[kind].name} went away. What was heard until then counts. Connect it, then play again.`;
    case 'no-sound':
      return `The browser gave no sound (${problem.reason}), so there is no clock to measure by.`;
    case 'too-few-hits':
      return `Only ${problem.hits} beats were answered; ${problem.needed} of 16 are needed. Try again.`;
    case 'too-uneven':
      return `Too uneven to tell (± ${Math.round(problem.spreadMs)} ms). Try again, with one finger.`;
    default:
      return unreachable(problem);
  }
}
