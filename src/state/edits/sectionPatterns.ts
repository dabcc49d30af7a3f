import type { FormEntryId, PatternId, SectionId } from '../../core/ids.ts';
import type { Project } from '../../core/project.ts';
import { playedChart, playedPatterns, sectionBars } from '../../core/song/form.ts';
import {
  type PatternCourse,
  patternCourse,
  withoutChangeAt,
  withPatternFrom,
} from '../../core/song/patternCourse.ts';
import type { FormEntry, Section, Song } from '../../core/song/song.ts';
import { sameData } from '../sameData.ts';
import { type Edit, inSection, inSong, mapped, withParts } from './edit.ts';
import { entryWithCourse, withCourse } from './movedBars.ts';

/** Whose patterns are meant: a section's, or those of one of its playings. */
export type PatternPlace =
  | { readonly kind: 'section'; readonly id: SectionId }
  | { readonly kind: 'playing'; readonly id: FormEntryId };

function hasPattern(project: Project, patternId: PatternId | undefined): boolean {
  return patternId === undefined || project.patterns.some((pattern) => pattern.id === patternId);
}

function ifThere(patternId: PatternId | undefined, edit: Edit): Edit {
  return (project) => (hasPattern(project, patternId) ? edit(project) : project);
}

function inEntry(id: FormEntryId, change: (entry: FormEntry, section: Section) => FormEntry): Edit {
  return inSong((song: Song) =>
    withParts(song, {
      form: mapped(song.form, (entry) => {
        const section = song.sections.find((each) => each.id === entry.sectionId);
        return entry.id === id && section ? change(entry, section) : entry;
      }),
    }),
  );
}

/**
 * The pattern that a section begins with; undefined lets the hands rest. Patterns from later bars on
 * stay. Nothing where there is no such pattern.
 */
export function setSectionPattern(id: SectionId, patternId: PatternId | undefined): Edit {
  return ifThere(
    patternId,
    inSection(id, (section) => withParts(section, { patternId })),
  );
}

/**
 * The pattern that one playing of a section begins with, in place of the section's own; patterns that
 * it has from later bars on stay. Undefined goes back to what the section plays, throughout.
 */
export function setEntryPattern(id: FormEntryId, patternId: PatternId | undefined): Edit {
  return ifThere(
    patternId,
    inEntry(id, (entry) =>
      patternId === undefined
        ? withParts(entry, { patternId, patternChanges: undefined })
        : withParts(entry, { patternId }),
    ),
  );
}

/**
 * One pattern from the first bar of a section or playing to the last. Undefined lets a section's hands
 * rest and gives a playing back to its section.
 */
export function playThroughout(place: PatternPlace, patternId: PatternId | undefined): Edit {
  const parts = { patternId, patternChanges: undefined };
  return ifThere(
    patternId,
    place.kind === 'section'
      ? inSection(place.id, (section) => withParts(section, parts))
      : inEntry(place.id, (entry) => withParts(entry, parts)),
  );
}

function changeCourse(
  place: PatternPlace,
  bar: number,
  change: (course: PatternCourse) => PatternCourse,
): Edit {
  if (place.kind === 'section')
    return inSection(place.id, (section) =>
      bar < sectionBars(section).length
        ? withCourse(section, change(patternCourse(section)))
        : section,
    );
  return inEntry(place.id, (entry, section) => {
    if (bar >= sectionBars(playedChart(section, entry.ending)).length) return entry;
    const course = change(playedPatterns(section, entry));
    const { patternId: _, patternChanges: __, ...plain } = entry;
    return sameData(course, playedPatterns(section, plain))
      ? withParts(entry, { patternId: undefined, patternChanges: undefined })
      : entryWithCourse(entry, section, course);
  });
}

/**
 * A pattern from a bar on (0-based), up to the next change behind it; undefined lets the hands rest
 * from there. A playing takes over what its section plays around it; it cannot rest from its first bar
 * where its section does not. Nothing outside the bars, or where there is no such pattern.
 */
export function setPatternFrom(
  place: PatternPlace,
  bar: number,
  patternId: PatternId | undefined,
): Edit {
  return ifThere(
    patternId,
    changeCourse(place, bar, (course) => withPatternFrom(course, bar, patternId)),
  );
}

/** Lets what is played before a bar (0-based) go on in it; nothing at the first bar. */
export function clearPatternFrom(place: PatternPlace, bar: number): Edit {
  return changeCourse(place, bar, (course) => withoutChangeAt(course, bar));
}

/** Bars (0-based, ascending) that a pattern was chosen for; what is played from `endBar` on is something else. */
export type BarsOfPattern = {
  readonly patternId: PatternId;
  readonly bars: readonly number[];
  readonly endBar: number;
};

/** Has a version of a pattern played in some bars of a section or playing, and the pattern itself again after them. */
export function playVersionIn(
  place: PatternPlace,
  { patternId, bars, endBar }: BarsOfPattern,
  version: PatternId,
): Edit {
  const edits = bars.flatMap((bar) => {
    const goesBack = bar + 1 < endBar && !bars.includes(bar + 1);
    return [
      setPatternFrom(place, bar, version),
      ...(goesBack ? [setPatternFrom(place, bar + 1, patternId)] : []),
    ];
  });
  return (project) => edits.reduce((changed, edit) => edit(changed), project);
}
