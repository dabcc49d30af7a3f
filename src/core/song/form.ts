import type { FormEntryId, SectionId } from '../ids.ts';
import { barTicks, type Meter } from '../time/meter.ts';
import { secondsPerTick } from '../time/tempoMap.ts';
import type { Seconds, Ticks } from '../time/ticks.ts';
import { type PatternCourse, patternCourse } from './patternCourse.ts';
import { slotsBetween } from './slotsBetween.ts';
import type { ChordSlot, FormEntry, OtherEnding, Section, Song } from './song.ts';

/** One bar of a section; `startTick` counts from the section's own start. */
export type SectionBar = { readonly startTick: Ticks; readonly meter: Meter };

/**
 * One bar as it is played: `entry` is its place in the form (0-based), `repeat` counts the playings
 * of its section from 0, `barInSection` is its place in that playing (0-based), `startTick` counts
 * from the start of the song.
 */
export type BarInstance = {
  readonly startTick: Ticks;
  readonly meter: Meter;
  readonly entry: number;
  readonly formEntryId: FormEntryId;
  readonly sectionId: SectionId;
  readonly repeat: number;
  readonly barInSection: number;
};

/** Bars with their chords, under the name of their section. */
type Written = Pick<Section, 'name' | 'meter' | 'barMeters' | 'slots'>;

/** Length of a section in ticks: that of its chord slots together. */
export function sectionTicks(section: Pick<Section, 'slots'>): Ticks {
  return section.slots.reduce((total, slot) => total + slot.durationTicks, 0);
}

/**
 * The bars of a section in order, until its slots are used up: bars of its meter, except those that
 * `barMeters` gives another one (entries beyond the last bar have no effect). No slots, no bars.
 * A chart always fills its bars, so slots that end inside a bar are a program error and throw.
 */
export function sectionBars(section: Written): SectionBar[] {
  const length = sectionTicks(section);
  const others = new Map(section.barMeters.map((other) => [other.bar, other.meter]));
  const bars: SectionBar[] = [];
  let startTick = 0;
  while (startTick < length) {
    const meter = others.get(bars.length) ?? section.meter;
    bars.push({ startTick, meter });
    startTick += barTicks(meter);
  }
  if (startTick !== length)
    throw new Error(
      `the chords of “${section.name}” end ${startTick - length} ticks before a bar does`,
    );
  return bars;
}

/**
 * A slot as one playing sounds it. `slot` is its place in the section's slots or, where `inEnding`,
 * in those of the playing's other ending.
 */
export type PlayedSlot = ChordSlot & { readonly slot: number; readonly inEnding?: true };

/** What one playing of a section sounds: its own bars, the last of them replaced by the other ending if it has one. */
export type PlayedChart = Omit<Written, 'slots'> & { readonly slots: readonly PlayedSlot[] };

/** How many of a section's own bars are played before the other ending: all where there is none. */
export function keptBars(section: Section, ending: OtherEnding | undefined): number {
  return Math.max(0, sectionBars(section).length - (ending?.replacesBars ?? 0));
}

/**
 * The chart of one playing of a section. With an ending, a chord that lasts into the bars that are
 * replaced ends where they begin.
 */
export function playedChart(section: Section, ending: OtherEnding | undefined): PlayedChart {
  const { name, meter, barMeters } = section;
  const own = section.slots.map((slot, i) => ({ ...slot, slot: i }));
  if (!ending) return { name, meter, barMeters, slots: own };
  const bars = sectionBars(section);
  const kept = keptBars(section, ending);
  const inEnding = ending.slots.map((slot, i) => ({ ...slot, slot: i, inEnding: true as const }));
  return {
    name,
    meter,
    barMeters: [
      ...barMeters.filter(({ bar }) => bar < kept),
      ...ending.barMeters.map((other) => ({ ...other, bar: kept + other.bar })),
    ],
    slots: [...slotsBetween(own, 0, bars[kept]?.startTick ?? sectionTicks(section)), ...inEnding],
  };
}

/**
 * What one playing of a section plays from which of its bars on. An entry with a pattern or with
 * changes of its own does not take the section's changes; those that stand in bars which its other
 * ending replaces fall away, what was played before them goes on through the ending.
 */
export function playedPatterns(section: Section, entry: PatternsOfEntry): PatternCourse {
  const kept = keptBars(section, entry.ending);
  const isOwn = entry.patternId !== undefined || entry.patternChanges !== undefined;
  const changes = isOwn
    ? entry.patternChanges
    : section.patternChanges?.filter(({ bar }) => bar < kept);
  const patternId = entry.patternId ?? section.patternId;
  const bars = sectionBars(playedChart(section, entry.ending)).length;
  return patternCourse(
    {
      ...(patternId === undefined ? {} : { patternId }),
      ...(changes ? { patternChanges: changes } : {}),
    },
    bars,
  );
}

type PatternsOfEntry = Pick<FormEntry, 'patternId' | 'patternChanges' | 'ending'>;

/**
 * As much of a section's own bars as some playing plays: all of them, unless every playing ends
 * otherwise. Of a section that is not played all.
 */
export function ownChart(section: Section, form: readonly FormEntry[]): PlayedChart {
  const replaced = form
    .filter(({ sectionId }) => sectionId === section.id)
    .map(({ ending }) => ending?.replacesBars ?? 0);
  const replacesBars = replaced.length === 0 ? 0 : Math.min(...replaced);
  return playedChart(section, { replacesBars, slots: [], barMeters: [] });
}

/** A form entry with its section and what it sounds; `repeat` counts the playings of that section from 0. */
export type Playing = {
  readonly entry: FormEntry;
  readonly section: Section;
  readonly repeat: number;
  readonly chart: PlayedChart;
};

/** The sections in playing order. An entry that names no section of the song is a program error and throws. */
export function playingsOf(song: Pick<Song, 'sections' | 'form'>): Playing[] {
  const sections = new Map(song.sections.map((section) => [section.id, section]));
  const played = new Map<SectionId, number>();
  return song.form.map((entry) => {
    const section = sections.get(entry.sectionId);
    if (!section) throw new Error(`the form plays a section that is not there: ${entry.sectionId}`);
    const repeat = played.get(section.id) ?? 0;
    played.set(section.id, repeat + 1);
    return { entry, section, repeat, chart: playedChart(section, entry.ending) };
  });
}

/**
 * Every bar of the song in playing order, end to end from tick 0, with the other ending of a playing
 * in place of the section's own. Sections that the form does not play are left out; a form without
 * entries gives no bars.
 */
export function unfoldForm(song: Pick<Song, 'sections' | 'form'>): BarInstance[] {
  let start = 0;
  return playingsOf(song).flatMap(({ entry, section, repeat, chart }, place) => {
    const bars = sectionBars(chart).map((bar, barInSection) => ({
      startTick: start + bar.startTick,
      meter: bar.meter,
      entry: place,
      formEntryId: entry.id,
      sectionId: section.id,
      repeat,
      barInSection,
    }));
    start += sectionTicks(chart);
    return bars;
  });
}

/** An amount of music at the song's tempo. */
export type MusicAmount = { readonly bars: number; readonly seconds: Seconds };

/** A section with how often it is played; `bars` and `seconds` are those of the section as it is written. */
export type SectionReturns = MusicAmount & {
  readonly sectionId: SectionId;
  readonly name: string;
  readonly playings: number;
};

/**
 * How much music a song is and how much of it is different: `whole` is what is played, `different`
 * counts once what any playing plays of each section, and every ending once that is not the same as
 * another. Sections come by how often they return, most first, then in the order in which they first appear.
 */
export type UniqueMusic = {
  readonly whole: MusicAmount;
  readonly different: MusicAmount;
  readonly sections: readonly SectionReturns[];
};

/** The amounts of `UniqueMusic`; sections that the form does not play are left out. No form, no music. */
export function uniqueMusic(song: Pick<Song, 'sections' | 'form' | 'tempo'>): UniqueMusic {
  const playings = playingsOf(song);
  const amountOf = (chart: Written): MusicAmount => ({
    bars: sectionBars(chart).length,
    seconds: sectionTicks(chart) * secondsPerTick(song.tempo),
  });
  const played = playings.filter(({ repeat }) => repeat === 0).map(({ section }) => section);
  const sections = played.map((section) => ({
    sectionId: section.id,
    name: section.name,
    playings: playings.filter((playing) => playing.section === section).length,
    ...amountOf(section),
  }));
  return {
    whole: totalOf(playings.map(({ chart }) => amountOf(chart))),
    different: totalOf(
      played.flatMap((section) => differentCharts(section, song.form)).map(amountOf),
    ),
    sections: sections.toSorted((a, b) => b.playings - a.playings),
  };
}

/** Of one section: its `ownChart`, and each ending that is not the same as another. */
function differentCharts(section: Section, form: readonly FormEntry[]): Written[] {
  const others = form.flatMap(({ sectionId, ending }) =>
    ending && sectionId === section.id
      ? [{ slots: ending.slots, barMeters: ending.barMeters }]
      : [],
  );
  const different = new Map(others.map((other) => [JSON.stringify(other), other]));
  return [
    ownChart(section, form),
    ...[...different.values()].map((other) => ({ ...section, ...other })),
  ];
}

function totalOf(amounts: readonly MusicAmount[]): MusicAmount {
  return {
    bars: amounts.reduce((total, { bars }) => total + bars, 0),
    seconds: amounts.reduce((total, { seconds }) => total + seconds, 0),
  };
}
