import type { Chord } from '../harmony/chord.ts';
import type { KeyNumber, Pitch } from '../harmony/pitch.ts';
import type { Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';

/** A note value by its share of a whole note: 1 whole, 2 half, 4 quarter … 64. */
export type NoteValue = 1 | 2 | 4 | 8 | 16 | 32 | 64;

/** So many notes of a tuplet in the time of so many plain ones: 3 in 2 for triplets, 2 in 3 for duplets. */
export type TupletRatio = { readonly actual: number; readonly normal: number };

/** How a length is written: a value, its dots, and the tuplet it is part of. */
export type WrittenLength = {
  readonly value: NoteValue;
  readonly dots: 0 | 1;
  readonly tuplet?: TupletRatio;
};

/** A note head, spelled; ties lead to the same note in the events beside it. */
export type SheetNote = {
  readonly keyNumber: KeyNumber;
  readonly pitch: Pitch;
  readonly tiedFromBefore: boolean;
  readonly tiedToNext: boolean;
};

export type Articulation = 'staccato' | 'accent' | 'ghost';

/**
 * One written value of a voice. No notes is a rest; a rest of a whole bar is written as a whole rest
 * in every meter (`isBarRest`). `beam` joins events of one beat; `tupletEdge` marks where the bracket
 * of a tuplet begins and ends.
 */
export type SheetEvent = {
  readonly startTick: Ticks;
  readonly durationTicks: Ticks;
  readonly written: WrittenLength;
  readonly notes: readonly SheetNote[];
  readonly articulations: readonly Articulation[];
  readonly isBarRest?: true;
  readonly beam?: 'begin' | 'continue' | 'end';
  readonly tupletEdge?: 'start' | 'stop';
};

/** Events end to end over a whole bar. */
export type SheetVoice = readonly SheetEvent[];

/** A chord symbol and where it stands. */
export type SheetChord = { readonly startTick: Ticks; readonly chord: Chord | 'no-chord' };

/**
 * One bar on two staves. A staff has one voice, or two (the higher one first) where a note is held
 * under moving ones. `section` indexes the timeline's sections. All ticks are the timeline's.
 */
export type SheetBar = {
  readonly startTick: Ticks;
  readonly meter: Meter;
  readonly section: number;
  readonly chords: readonly SheetChord[];
  readonly staves: Readonly<Record<HandName, readonly SheetVoice[]>>;
};

/** Music as it is written: the right hand on the upper staff, the left on the lower. */
export type Sheet = { readonly bars: readonly SheetBar[] };
