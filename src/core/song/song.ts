import type { Chord } from '../harmony/chord.ts';
import type { Key } from '../harmony/key.ts';
import type { KeyNumber } from '../harmony/pitch.ts';
import type { FormEntryId, PatternId, SectionId } from '../ids.ts';
import type { Meter } from '../time/meter.ts';
import type { Tempo } from '../time/tempoMap.ts';
import type { Ticks } from '../time/ticks.ts';

export const SECTION_KINDS = [
  'intro',
  'verse',
  'pre-chorus',
  'chorus',
  'post-chorus',
  'bridge',
  'solo',
  'interlude',
  'outro',
] as const;

export type SectionKind = (typeof SECTION_KINDS)[number];

/** Washes a section can be printed on; each has its own hatching so that colour is never the only sign. */
export const WASHES = ['straw', 'clay', 'moss', 'slate', 'plum', 'rust'] as const;

export type Wash = (typeof WASHES)[number];

/**
 * One chord change and how long it lasts. Slots lie end to end from the section's start.
 * `fixedKeys`: the key numbers the player wants for it, low to high; the optimiser keeps them.
 */
export type ChordSlot = {
  readonly chord: Chord | 'no-chord';
  readonly durationTicks: Ticks;
  readonly fixedKeys?: {
    readonly left: readonly KeyNumber[];
    readonly right: readonly KeyNumber[];
  };
};

/** In this one bar of the section (0-based) another meter holds. */
export type BarMeter = { readonly bar: number; readonly meter: Meter };

/** From this bar on (0-based) this pattern is played, or without one the hands rest; up to the next change. */
export type PatternChange = { readonly bar: number; readonly patternId?: PatternId };

/**
 * What is played: `patternId` from the first bar on (without one the hands rest), and
 * `patternChanges` from later bars on (ascending, from bar 1). Changes behind the last bar have no effect.
 */
export type PatternChoice = {
  readonly patternId?: PatternId;
  readonly patternChanges?: readonly PatternChange[];
};

/**
 * A part of the song, written once however often it returns. Its bars follow from the slots'
 * total length: bars of `meter`, except those that `barMeters` (ascending) gives another one.
 */
export type Section = {
  readonly id: SectionId;
  readonly name: string;
  readonly kind: SectionKind;
  readonly wash: Wash;
  readonly meter: Meter;
  readonly barMeters: readonly BarMeter[];
  readonly slots: readonly ChordSlot[];
  readonly patternId?: PatternId;
  readonly patternChanges?: readonly PatternChange[];
};

/**
 * Bars that end a section in one of its playings, in the section's meter, in place of its last
 * `replacesBars` bars (whole). With 0 they follow the whole section; where the section has no more
 * bars than that, they are all that is played. `barMeters` counts the ending's own bars.
 */
export type OtherEnding = {
  readonly replacesBars: number;
  readonly slots: readonly ChordSlot[];
  readonly barMeters: readonly BarMeter[];
};

/**
 * One place in the playing order. `patternId` makes this return differ from the section's own
 * pattern throughout, `ending` from the section's own ending. `patternChanges` stand in place of the
 * section's own (none, where the list is empty) and count the bars of this playing, its other ending
 * included; before the first of them `patternId` or else the section's own pattern is played.
 */
export type FormEntry = {
  readonly id: FormEntryId;
  readonly sectionId: SectionId;
  readonly patternId?: PatternId;
  readonly patternChanges?: readonly PatternChange[];
  readonly ending?: OtherEnding;
};

export type Song = {
  readonly title: string;
  readonly key: Key;
  /** Counts the felt beat of the meter the song starts in. Other meters keep its note values. */
  readonly tempo: Tempo;
  readonly sections: readonly Section[];
  readonly form: readonly FormEntry[];
  readonly notes: string;
};
