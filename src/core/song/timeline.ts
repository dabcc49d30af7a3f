import type { Chord } from '../harmony/chord.ts';
import type { FormEntryId, PatternId, SectionId } from '../ids.ts';
import type { Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { ChordSlot } from './song.ts';

/** One bar as it is played. `section` indexes `Timeline.sections`; `barInSection` is 0-based. */
export type TimelineBar = {
  readonly startTick: Ticks;
  readonly meter: Meter;
  readonly section: number;
  readonly barInSection: number;
};

/** One written chord as it is played, from its change to the next. `slot` is its place in the section's slots. */
export type ChordSpan = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly chord: Chord | 'no-chord';
  readonly section: number;
  readonly slot: number;
  readonly fixedKeys?: NonNullable<ChordSlot['fixedKeys']>;
};

/** One playing of a section. `repeat` counts its playings from 0. */
export type SectionSpan = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly sectionId: SectionId;
  readonly name: string;
  readonly formEntryId?: FormEntryId;
  readonly repeat: number;
  readonly bars: number;
  readonly patternId?: PatternId;
};

/** The song laid out in playing order; all lists ascend and lie end to end from tick 0. */
export type Timeline = {
  readonly bars: readonly TimelineBar[];
  readonly chords: readonly ChordSpan[];
  readonly sections: readonly SectionSpan[];
  readonly lengthTicks: Ticks;
};
