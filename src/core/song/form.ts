import type { FormEntryId, SectionId } from '../ids.ts';
import { barTicks, type Meter } from '../time/meter.ts';
import { secondsPerTick } from '../time/tempoMap.ts';
import type { Seconds, Ticks } from '../time/ticks.ts';
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

/** An amount of music at the song's tempo. */
export type MusicAmount = { readonly bars: number; readonly seconds: Seconds };

/** A section with how often it is played; `bars` and `seconds` are those of one playing. */
export type SectionReturns = MusicAmount & {
  readonly sectionId: SectionId;
  readonly name: string;
  readonly playings: number;
};

/**
 * How much music a song is and how much of it is different: `whole` is what is played, `different`
 * counts each section that is played once. Sections come by how often they return, most first, then
 * in the order in which they first appear.
 */
export type UniqueMusic = {
  readonly whole: MusicAmount;
  readonly different: MusicAmount;
  readonly sections: readonly SectionReturns[];
};

/** The amounts of `UniqueMusic`; sections that the form does not play are left out. No form, no music. */
export function uniqueMusic(song: Pick<Song, 'sections' | 'form' | 'tempo'>): UniqueMusic {
  const playings = playingsOf(song);
  const perTick = secondsPerTick(song.tempo);
  const sections = playings
    .filter(({ repeat }) => repeat === 0)
    .map(({ section }) => ({
      sectionId: section.id,
      name: section.name,
      playings: playings.filter((playing) => playing.section === section).length,
      bars: sectionBars(section).length,
      seconds: sectionTicks(section) * perTick,
    }));
  return {
    whole: totalOf(sections, (section) => section.playings),
    different: totalOf(sections, () => 1),
    sections: sections.toSorted((a, b) => b.playings - a.playings),
  };
}

function totalOf(
  sections: readonly SectionReturns[],
  timesOf: (section: SectionReturns) => number,
): MusicAmount {
  return {
    bars: sections.reduce((total, section) => total + timesOf(section) * section.bars, 0),
    seconds: sections.reduce((total, section) => total + timesOf(section) * section.seconds, 0),
  };
}
