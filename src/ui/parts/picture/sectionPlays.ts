import type { PatternId } from '../../../core/ids.ts';
import type { Project } from '../../../core/project.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { playedChart, playedPatterns, sectionBars } from '../../../core/song/form.ts';
import {
  type PatternCourse,
  patternCourse,
  patternIdAt,
} from '../../../core/song/patternCourse.ts';
import type { FormEntry, Section } from '../../../core/song/song.ts';
import { formatMeter, type Meter, sameMeter } from '../../../core/time/meter.ts';
import type { MeterFit } from '../../../state/edits/fitMeter.ts';

/** Whether a pattern is played in all bars, in some or in none. */
export type Share = 'all' | 'some' | 'none';

/** One playing of a section, counted from 1; `isOwn` where it does not play what its section does. */
export type SectionReturn = {
  readonly entry: FormEntry;
  readonly time: number;
  readonly plays: Share;
  readonly isOwn: boolean;
};

/** A section as it stands to a pattern: whether it plays it, what it plays now, and its returns where there are several. */
export type SectionPlays = {
  readonly section: Section;
  readonly bars: number;
  readonly plays: Share;
  readonly fits: boolean;
  /** What it plays: the names of patterns with the bar from which on (0-based); without one the hands rest. */
  readonly playing: readonly { readonly bar: number; readonly name: string | undefined }[];
  readonly returns: readonly SectionReturn[];
};

function shareIn(course: PatternCourse, id: PatternId): Share {
  const those = course.filter(({ patternId }) => patternId === id);
  if (those.length === 0) return 'none';
  return those.length === course.length ? 'all' : 'some';
}

function returnsOf(
  entries: readonly FormEntry[],
  section: Section,
  id: PatternId,
): SectionReturn[] {
  return entries
    .filter((entry) => entry.sectionId === section.id)
    .map((entry, i) => ({
      entry,
      time: i + 1,
      plays: shareIn(playedPatterns(section, entry), id),
      isOwn: entry.patternId !== undefined || entry.patternChanges !== undefined,
    }));
}

/** The sections of a song as they stand to a pattern, in the order they are written. */
export function sectionsFor(
  { song, patterns }: Pick<Project, 'song' | 'patterns'>,
  pattern: Pattern,
): SectionPlays[] {
  return song.sections.map((section) => {
    const returns = returnsOf(song.form, section, pattern.id);
    const bars = sectionBars(section).length;
    const course = patternCourse(section, bars);
    return {
      section,
      bars,
      plays: shareIn(course, pattern.id),
      fits: sameMeter(section.meter, pattern.meter),
      playing: course.map(({ bar, patternId }) => ({
        bar,
        name: patterns.find(({ id }) => id === patternId)?.name,
      })),
      returns: returns.length > 1 ? returns : [],
    };
  });
}

/** What is played from which bar on, in a few words: "plays Ballad, from bar 5 hands rest". */
export function courseWords(playing: SectionPlays['playing']): string {
  return playing
    .map(({ bar, name }) => {
      if (bar === 0) return name === undefined ? 'hands rest' : `plays ${name}`;
      return `from bar ${bar + 1} ${name ?? 'hands rest'}`;
    })
    .join(', ');
}

/** What a section is and plays, in a few words: "8 bars of 4/4, plays Ballad eighths". */
export function sectionWords({ section, bars, playing }: SectionPlays): string {
  const size = `${bars === 1 ? '1 bar' : `${bars} bars`} of ${formatMeter(section.meter)}`;
  return `${size}, ${courseWords(playing)}`;
}

/**
 * A bar of a section or of one playing as it stands to a pattern: whether the pattern is played in it,
 * whether it begins there, and the bar's meter. Bars count from 0.
 */
export type BarPlays = {
  readonly bar: number;
  readonly meter: Meter;
  readonly plays: boolean;
  readonly begins: boolean;
};

/** The bars of a section, or of one of its playings, as they stand to a pattern. */
export function barsFor(
  section: Section,
  entry: FormEntry | undefined,
  pattern: Pattern,
): BarPlays[] {
  const bars = sectionBars(entry ? playedChart(section, entry.ending) : section);
  const course = entry ? playedPatterns(section, entry) : patternCourse(section, bars.length);
  return bars.map(({ meter }, bar) => {
    const plays = patternIdAt(course, bar) === pattern.id;
    return { bar, meter, plays, begins: plays && course.some((change) => change.bar === bar) };
  });
}

/** How a pattern is brought into another meter, as it is offered. */
export const FIT_WORDS: Readonly<Record<MeterFit, string>> = {
  cut: 'cut: the beats that are too many are left out',
  restate: 'beat for beat, in the beats of the other meter',
  open: 'beat for beat; in the added beats nothing begins',
  again: 'in the added beats the bar begins again',
  across: 'it runs on over the bar lines until it comes out even',
};
