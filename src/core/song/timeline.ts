import type { Chord } from '../harmony/chord.ts';
import type { FormEntryId, PatternId, SectionId } from '../ids.ts';
import type { Meter } from '../time/meter.ts';
import type { TempoMap } from '../time/tempoMap.ts';
import type { Ticks } from '../time/ticks.ts';
import {
  type PlayedSlot,
  type Playing,
  playedPatterns,
  playingsOf,
  sectionBars,
  sectionTicks,
  unfoldForm,
} from './form.ts';
import { choiceOf } from './patternCourse.ts';
import type { ChordSlot, PatternChange, Song } from './song.ts';

/** One bar as it is played. `section` indexes `Timeline.sections`; `barInSection` is 0-based. */
export type TimelineBar = {
  readonly startTick: Ticks;
  readonly meter: Meter;
  readonly section: number;
  readonly barInSection: number;
};

/**
 * One written chord as it is played, from its change to the next. `slot` is its place in the
 * section's slots or, where `inEnding`, in those of the other ending of its playing.
 */
export type ChordSpan = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly chord: Chord | 'no-chord';
  readonly section: number;
  readonly slot: number;
  readonly inEnding?: true;
  readonly fixedKeys?: NonNullable<ChordSlot['fixedKeys']>;
};

/**
 * One playing of a section. `repeat` counts its playings from 0, `bars` are those that are played.
 * `patternId` is what it begins with, `patternChanges` what follows (see `patternCourse`).
 */
export type SectionSpan = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly sectionId: SectionId;
  readonly name: string;
  readonly formEntryId?: FormEntryId;
  readonly repeat: number;
  readonly bars: number;
  readonly patternId?: PatternId;
  readonly patternChanges?: readonly PatternChange[];
};

/** The song laid out in playing order; all lists ascend and lie end to end from tick 0. */
export type Timeline = {
  readonly bars: readonly TimelineBar[];
  readonly chords: readonly ChordSpan[];
  readonly sections: readonly SectionSpan[];
  readonly lengthTicks: Ticks;
};

function sectionSpans(playings: readonly Playing[]): SectionSpan[] {
  let startTick = 0;
  return playings.map(({ entry, section, repeat, chart }) => {
    const span: SectionSpan = {
      startTick,
      endTick: startTick + sectionTicks(chart),
      sectionId: section.id,
      name: section.name,
      formEntryId: entry.id,
      repeat,
      bars: sectionBars(chart).length,
      ...choiceOf(playedPatterns(section, entry)),
    };
    startTick = span.endTick;
    return span;
  });
}

function chordSpans(slots: readonly PlayedSlot[], section: number, from: Ticks): ChordSpan[] {
  let startTick = from;
  return slots.map(({ durationTicks, ...slot }) => {
    const span: ChordSpan = { startTick, endTick: startTick + durationTicks, section, ...slot };
    startTick = span.endTick;
    return span;
  });
}

/**
 * The song laid out in playing order from tick 0: its bars, its chords as they are written (a chord
 * that comes again stays a change of its own) and the playings of its sections, each with the
 * patterns and the other ending of its form entry or else with its section's own. Sections that are not played give nothing; a
 * song without form entries has length 0. Throws where `unfoldForm` does.
 */
export function timelineOf(song: Pick<Song, 'sections' | 'form'>): Timeline {
  const playings = playingsOf(song);
  const sections = sectionSpans(playings);
  return {
    bars: unfoldForm(song).map(({ startTick, meter, entry, barInSection }) => ({
      startTick,
      meter,
      section: entry,
      barInSection,
    })),
    chords: playings.flatMap(({ chart }, i) =>
      chordSpans(chart.slots, i, sections[i]?.startTick ?? 0),
    ),
    sections,
    lengthTicks: sections.at(-1)?.endTick ?? 0,
  };
}

/** Place of the last of `spans` that starts at or before `tick`, −1 if none does. `spans` ascend. */
function lastStarted(spans: readonly { readonly startTick: Ticks }[], tick: Ticks): number {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (spans[middle]!.startTick <= tick) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** The chord that is written at a tick, its first tick included, its last excluded; undefined outside the timeline. */
export function chordAt(timeline: Timeline, tick: Ticks): ChordSpan | undefined {
  const span = timeline.chords[lastStarted(timeline.chords, tick)];
  return span && tick < span.endTick ? span : undefined;
}

/** The bar in which a tick lies; undefined outside the timeline. */
export function barAt(timeline: Timeline, tick: Ticks): TimelineBar | undefined {
  return tick < timeline.lengthTicks ? timeline.bars[lastStarted(timeline.bars, tick)] : undefined;
}

/** The playing of a section in which a tick lies; undefined outside the timeline. */
export function sectionAt(timeline: Timeline, tick: Ticks): SectionSpan | undefined {
  return tick < timeline.lengthTicks
    ? timeline.sections[lastStarted(timeline.sections, tick)]
    : undefined;
}

/** When everything sounds: the song's one tempo from beginning to end; note values keep it through every meter. */
export function tempoMapOf(song: Pick<Song, 'tempo'>): TempoMap {
  return [{ tick: 0, tempo: song.tempo }];
}
