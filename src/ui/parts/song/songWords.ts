import { fifthsOf, type Key, type Mode } from '../../../core/harmony/key.ts';
import type { PitchClass } from '../../../core/harmony/pitch.ts';
import type { SectionKind } from '../../../core/song/song.ts';
import { type Seconds, TICKS_PER_QUARTER, type Ticks } from '../../../core/time/ticks.ts';

/** A length of time as minutes and seconds, 4:02, to the nearest second. */
export function clockText(sec: Seconds): string {
  const whole = Math.round(sec);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** Beats that a tempo can count, by their length: their name and how they are drawn (SMuFL metronome marks). */
const BEATS: Readonly<Record<Ticks, { readonly name: string; readonly sign: string }>> = {
  [TICKS_PER_QUARTER / 4]: { name: 'sixteenth', sign: '\uECA9' },
  [TICKS_PER_QUARTER / 2]: { name: 'eighth', sign: '\uECA7' },
  [(TICKS_PER_QUARTER * 3) / 4]: { name: 'dotted eighth', sign: '\uECA7\uECB7' },
  [TICKS_PER_QUARTER]: { name: 'quarter', sign: '\uECA5' },
  [(TICKS_PER_QUARTER * 3) / 2]: { name: 'dotted quarter', sign: '\uECA5\uECB7' },
  [TICKS_PER_QUARTER * 2]: { name: 'half', sign: '\uECA3' },
  [TICKS_PER_QUARTER * 3]: { name: 'dotted half', sign: '\uECA3\uECB7' },
};

/** The note value that a tempo counts, in words and drawn; beats without a name of their own are told in quarters. */
export function beatWords(beatTicks: Ticks): { readonly name: string; readonly sign: string } {
  return BEATS[beatTicks] ?? { name: `${beatTicks / TICKS_PER_QUARTER} quarters`, sign: '' };
}

const LETTERS = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const;

/** The fifteen tonics of a mode whose keys have at most seven signs, by letter from C. */
export function tonicChoices(mode: Mode): PitchClass[] {
  return LETTERS.flatMap((letter) =>
    [-1, 0, 1].map((alteration) => ({ letter, alteration })),
  ).filter((tonic) => Math.abs(fifthsOf({ tonic, mode })) <= 7);
}

/** A key signature in words: “2 sharps”, “1 flat”, “no sharps or flats”. */
export function signatureText(key: Key): string {
  const fifths = fifthsOf(key);
  if (fifths === 0) return 'no sharps or flats';
  const count = Math.abs(fifths);
  return `${count} ${fifths > 0 ? 'sharp' : 'flat'}${count === 1 ? '' : 's'}`;
}

/** Kinds of section as they are offered. */
export const KIND_NAMES: Readonly<Record<SectionKind, string>> = {
  intro: 'Intro',
  verse: 'Verse',
  'pre-chorus': 'Pre-chorus',
  chorus: 'Chorus',
  'post-chorus': 'Post-chorus',
  bridge: 'Bridge',
  solo: 'Solo',
  interlude: 'Interlude',
  outro: 'Outro',
};

/** “1 bar”, “8 bars”. */
export function barCount(bars: number): string {
  return `${bars} ${bars === 1 ? 'bar' : 'bars'}`;
}
