import type { PatternId } from '../ids.ts';
import { patternCourse, patternIdAt } from '../song/patternCourse.ts';
import type { Timeline, TimelineBar } from '../song/timeline.ts';
import { sameMeter } from '../time/meter.ts';
import type { Pattern } from './pattern.ts';

/** The pattern that the hands play in a bar of a timeline (`index` counts its bars from 0); undefined where they rest. */
export type PatternAt = (bar: TimelineBar, index: number) => Pattern | undefined;

/**
 * The patterns of a project's timeline: in each bar the pattern that its section (in this return)
 * names from there on or from an earlier bar. Undefined where it names none, or one that is not among
 * `patterns`.
 */
export function patternForBar(
  patterns: readonly Pattern[],
  timeline: Pick<Timeline, 'sections'>,
): PatternAt {
  const byId = new Map<PatternId, Pattern>(patterns.map((pattern) => [pattern.id, pattern]));
  const courses = timeline.sections.map((span) => patternCourse(span));
  return (bar) => {
    const id = patternIdAt(courses[bar.section] ?? [], bar.barInSection);
    return id === undefined ? undefined : byId.get(id);
  };
}

/** The same patterns, but the hands rest in bars whose meter is not the pattern's, instead of `realise` refusing them. */
export function onlyWhereMeterFits(patternAt: PatternAt): PatternAt {
  return (bar, index) => {
    const pattern = patternAt(bar, index);
    return pattern && sameMeter(pattern.meter, bar.meter) ? pattern : undefined;
  };
}
