import type { PatternId } from '../../core/ids.ts';
import type { Project } from '../../core/project.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import { sectionBars } from '../../core/song/form.ts';
import type { FormEntry, Section } from '../../core/song/song.ts';
import { formatMeter, sameMeter } from '../../core/time/meter.ts';
import type { MeterFit } from '../../state/edits/fitMeter.ts';

/** One playing of a section, counted from 1; `isOwn` where it has this pattern for itself alone. */
export type SectionReturn = {
  readonly entry: FormEntry;
  readonly time: number;
  readonly plays: boolean;
  readonly isOwn: boolean;
};

/** A section as it stands to a pattern: whether it plays it, what it plays now, and its returns where there are several. */
export type SectionPlays = {
  readonly section: Section;
  readonly bars: number;
  readonly plays: boolean;
  readonly fits: boolean;
  /** Name of the pattern that it plays; undefined where the hands rest. */
  readonly playing: string | undefined;
  readonly returns: readonly SectionReturn[];
};

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
      plays: (entry.patternId ?? section.patternId) === id,
      isOwn: entry.patternId === id,
    }));
}

/** The sections of a song as they stand to a pattern, in the order they are written. */
export function sectionsFor(
  { song, patterns }: Pick<Project, 'song' | 'patterns'>,
  pattern: Pattern,
): SectionPlays[] {
  return song.sections.map((section) => {
    const returns = returnsOf(song.form, section, pattern.id);
    return {
      section,
      bars: sectionBars(section).length,
      plays: section.patternId === pattern.id,
      fits: sameMeter(section.meter, pattern.meter),
      playing: patterns.find(({ id }) => id === section.patternId)?.name,
      returns: returns.length > 1 ? returns : [],
    };
  });
}

/** What a section is and plays, in a few words: "8 bars of 4/4, plays Ballad eighths". */
export function sectionWords({ section, bars, playing }: SectionPlays): string {
  const size = `${bars === 1 ? '1 bar' : `${bars} bars`} of ${formatMeter(section.meter)}`;
  return playing === undefined ? `${size}, hands rest` : `${size}, plays ${playing}`;
}

/** How a pattern is brought into another meter, as it is offered. */
export const FIT_WORDS: Readonly<Record<MeterFit, string>> = {
  cut: 'cut: the beats that are too many are left out',
  restate: 'beat for beat, in the beats of the other meter',
  open: 'beat for beat; in the added beats nothing begins',
  again: 'in the added beats the bar begins again',
  across: 'it runs on over the bar lines until it comes out even',
};
