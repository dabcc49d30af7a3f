import type { KeyNumber } from '../core/harmony/pitch.ts';
import { unreachable } from '../core/result.ts';
import type { MidiMessage } from '../input/midiMessage.ts';

/**
 * What of an instrument can be taught a command, whatever channel it sends on: a key, a pad (a note on
 * the drum channel, so that it is not taken for the key of the same number), a pedal or switch (a
 * controller), or a foot switch that changes programs. Numbers as MIDI counts them, from 0.
 */
export type MidiTrigger =
  | { readonly kind: 'key' | 'pad'; readonly keyNumber: KeyNumber }
  | { readonly kind: 'control'; readonly controller: number }
  | { readonly kind: 'program'; readonly program: number };

/** The controllers of pedals (MIDI 1.0): the right one of a piano, its middle one and its left one. */
export const PEDALS = { sustain: 64, sostenuto: 66, soft: 67 } as const;

/** Channel 10, counted from 0, on which drums are played (General MIDI). */
const DRUM_CHANNEL = 9;

/** A switch is on from this value up (MIDI 1.0). */
const ON_VALUE = 64;

/** A pedal pressed half-way wavers around 64; it must come down to this before it counts as let go. */
const OFF_VALUE = 48;

/** Two presses are at least this far apart; what comes sooner is the same one, sent on two channels or bouncing. */
const APART_MS = 150;

/**
 * Controllers that are not pressed: banks and parameters that are chosen (0, 32; 6, 38, 96 to 101) and
 * messages to a whole channel (120 up), as MIDI 1.0 numbers them.
 */
function isPressed(controller: number): boolean {
  const isChoice = [0, 6, 32, 38].includes(controller) || (controller >= 96 && controller <= 101);
  return !isChoice && controller < 120;
}

/** One text for each trigger, the same for equal ones. */
export function triggerText(trigger: MidiTrigger): string {
  switch (trigger.kind) {
    case 'key':
    case 'pad':
      return `${trigger.kind} ${trigger.keyNumber}`;
    case 'control':
      return `control ${trigger.controller}`;
    case 'program':
      return `program ${trigger.program}`;
    default:
      return unreachable(trigger);
  }
}

/** What of the instrument a message comes from; undefined for controllers that are not pressed. */
export function triggerOf(message: MidiMessage): MidiTrigger | undefined {
  switch (message.kind) {
    case 'note-on':
    case 'note-off': {
      const { channel, keyNumber } = message;
      return { kind: channel === DRUM_CHANNEL ? 'pad' : 'key', keyNumber };
    }
    case 'control': {
      const { controller } = message;
      return isPressed(controller) ? { kind: 'control', controller } : undefined;
    }
    case 'program':
      return { kind: 'program', program: message.program };
    default:
      return unreachable(message);
  }
}

/**
 * Tells of each message in turn, with its time in milliseconds, what was pressed with it; undefined
 * where nothing was. A key is pressed by its note-on; a controller when it comes up to 64 after being
 * let go, or says the same value again, as a switch does that never says it was let go. What is
 * pressed twice within 150 ms was pressed once.
 */
export function pressReader(): (message: MidiMessage, atMs: number) => MidiTrigger | undefined {
  const values = new Map<string, { readonly value: number; readonly isDown: boolean }>();
  const pressedMs = new Map<string, number>();

  function isPress(message: MidiMessage): boolean {
    if (message.kind !== 'control') return message.kind !== 'note-off';
    const { channel, controller, value } = message;
    const place = `${channel} ${controller}`;
    const before = values.get(place);
    const wasDown = before?.isDown ?? false;
    const isDown = value >= ON_VALUE || (wasDown && value > OFF_VALUE);
    values.set(place, { value, isDown });
    return value >= ON_VALUE && (!wasDown || before?.value === value);
  }

  return (message, atMs) => {
    const trigger = triggerOf(message);
    if (!isPress(message) || !trigger) return undefined;
    const text = triggerText(trigger);
    const last = pressedMs.get(text);
    if (last !== undefined && Math.abs(atMs - last) < APART_MS) return undefined;
    pressedMs.set(text, atMs);
    return trigger;
  };
}

function isDataByte(value: unknown): value is number {
  return Number.isInteger(value) && Number(value) >= 0 && Number(value) <= 127;
}

/** The trigger that was kept as `kept`; undefined where it is none. */
export function keptTrigger(kept: unknown): MidiTrigger | undefined {
  const { kind, keyNumber, controller, program } = Object(kept) as Record<string, unknown>;
  if ((kind === 'key' || kind === 'pad') && isDataByte(keyNumber)) return { kind, keyNumber };
  if (kind === 'control' && isDataByte(controller) && isPressed(controller))
    return { kind, controller };
  return kind === 'program' && isDataByte(program) ? { kind, program } : undefined;
}
