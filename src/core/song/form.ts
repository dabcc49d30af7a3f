import type { FormEntryId, SectionId } from '../ids.ts';
import { barTicks, type Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { FormEntry, Section, Song } from './song.ts';

/** One bar of a section; `startTick` counts from the section's own start. */
export type SectionBar = { readonly startTick: Ticks; readonly meter: Meter };

/**
 * One bar as it is played: `entry` is its place in the form (0-based), `repeat` counts the playings
 * of its section from 0, `barInSection` is its place in the chart (0-based), `startTick` counts
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

/** Length of a section in ticks: that of its chord slots together. */
export function sectionTicks(section: Pick<Section, 'slots'>): Ticks {
  return section.slots.reduce((total, slot) => total + slot.durationTicks, 0);
}

/**
 * The bars of a section in order, until its slots are used up: bars of its meter, except those that
 * `barMeters` gives another one (entries beyond the last bar have no effect). No slots, no bars.
 * A chart always fills its bars, so slots that end inside a bar are a program error and throw.
 */
export function sectionBars(
  section: Pick<Section, 'name' | 'meter' | 'barMeters' | 'slots'>,
): SectionBar[] {
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

/** A form entry with its section; `repeat` counts the playings of that section from 0. */
export type Playing = {
  readonly entry: FormEntry;
  readonly section: Section;
  readonly repeat: number;
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
    return { entry, section, repeat };
  });
}

/**
 * Every bar of the song in playing order, end to end from tick 0. Sections that the form does not
 * play are left out; a form without entries gives no bars.
 */
export function unfoldForm(song: Pick<Song, 'sections' | 'form'>): BarInstance[] {
  let start = 0;
  return playingsOf(song).flatMap(({ entry, section, repeat }, place) => {
    const bars = sectionBars(section).map((bar, barInSection) => ({
      startTick: start + bar.startTick,
      meter: bar.meter,
      entry: place,
      formEntryId: entry.id,
      sectionId: section.id,
      repeat,
      barInSection,
    }));
    start += sectionTicks(section);
    return bars;
  });
}
