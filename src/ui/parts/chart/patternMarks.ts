import type { PatternId } from '../../../core/ids.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { keptBars, playedPatterns } from '../../../core/song/form.ts';
import { type PatternCourse, patternCourse } from '../../../core/song/patternCourse.ts';
import type { FormEntry, Section } from '../../../core/song/song.ts';

/** What stands over bars of a chart (0-based) where another pattern begins: its name, or that the hands rest. */
export type PatternMarks = ReadonlyMap<number, string>;

/** What the section, or the playing of it that is looked at, plays from which bar on. */
export function courseShown(section: Section, entry: FormEntry | undefined): PatternCourse {
  return entry ? playedPatterns(section, entry) : patternCourse(section);
}

function nameIn(patterns: readonly Pattern[], id: PatternId | undefined): string {
  return patterns.find((pattern) => pattern.id === id)?.name ?? 'hands rest';
}

/**
 * The marks over a section's own chart and, counted from its own first bar, over the other ending of
 * the playing. What is played from the first bar on is marked only where it changes later or is not
 * what the section begins with: else the heading says it.
 */
export function patternMarks(
  section: Section,
  entry: FormEntry | undefined,
  patterns: readonly Pattern[],
): { readonly own: PatternMarks; readonly ending: PatternMarks } {
  const course = courseShown(section, entry);
  const isPlain = course.length === 1 && course[0]?.patternId === section.patternId;
  const kept = keptBars(section, entry?.ending);
  const marks = isPlain
    ? []
    : course.map(({ bar, patternId }) => [bar, nameIn(patterns, patternId)] as const);
  return {
    own: new Map(marks.filter(([bar]) => bar < kept)),
    ending: new Map(
      marks.filter(([bar]) => bar >= kept).map(([bar, name]) => [bar - kept, name] as const),
    ),
  };
}
