import type { KeyNumber } from '../harmony/pitch.ts';
import type { SourcePart } from './sources.ts';

/** The sources that a drum kit feeds. */
export type DrumPart = Extract<
  SourcePart,
  'kick' | 'snare' | 'hi-hat' | 'tom' | 'cymbal' | 'percussion'
>;

/**
 * Which source a drum's key number feeds: the General MIDI percussion map, keys 35 to 81
 * (reference [M21], citing GM Level 1), by kind of drum. A side stick is played in the snare's
 * place and counts as snare. 22 and 26 are the hi-hat's edge, closed and open, on electronic kits
 * (common practice).
 */
export const DRUM_KEYS: Readonly<Record<Exclude<DrumPart, 'percussion'>, readonly KeyNumber[]>> = {
  kick: [35, 36],
  snare: [37, 38, 40],
  'hi-hat': [22, 26, 42, 44, 46],
  tom: [41, 43, 45, 47, 48, 50],
  cymbal: [49, 51, 52, 53, 55, 57, 59],
};

/** The source a drum feeds; every key number that is no drum of the kit is percussion. */
export function drumPartOf(keyNumber: KeyNumber): DrumPart {
  const parts = ['kick', 'snare', 'hi-hat', 'tom', 'cymbal'] as const;
  return parts.find((part) => DRUM_KEYS[part].includes(keyNumber)) ?? 'percussion';
}
