import type { PatternId } from '../ids.ts';
import type { PatternChange, PatternChoice } from './song.ts';

/**
 * Which pattern is played from which bar on, from the first bar (0) to the last. The first entry
 * stands at bar 0, the others ascend, and none says what is played there anyway.
 */
export type PatternCourse = readonly PatternChange[];

/** A change at a bar; without `patternId` the hands rest from there. */
export function changeTo(bar: number, patternId: PatternId | undefined): PatternChange {
  return patternId === undefined ? { bar } : { bar, patternId };
}

/** The changes that say something new; what stands at bar 0 always does. */
function withoutEcho(changes: readonly PatternChange[]): PatternCourse {
  return changes.filter(
    ({ bar, patternId }, i) => bar === 0 || patternId !== changes[i - 1]?.patternId,
  );
}

/** What is chosen for a section or a playing as a course over its `bars` bars; changes behind them have no effect. */
export function patternCourse(
  { patternId, patternChanges = [] }: PatternChoice,
  bars = Number.POSITIVE_INFINITY,
): PatternCourse {
  return withoutEcho([
    changeTo(0, patternId),
    ...patternChanges.filter(({ bar }) => bar > 0 && bar < bars),
  ]);
}

/** A course as it is kept with a section or a playing, without the properties that say nothing. */
export function choiceOf(course: PatternCourse): PatternChoice {
  const [first, ...patternChanges] = course;
  return {
    ...(first?.patternId === undefined ? {} : { patternId: first.patternId }),
    ...(patternChanges.length === 0 ? {} : { patternChanges }),
  };
}

/** The pattern of a bar (0-based); undefined where the hands rest. */
export function patternIdAt(course: PatternCourse, bar: number): PatternId | undefined {
  return course.findLast((change) => change.bar <= bar)?.patternId;
}

/** The course with this pattern (or a rest) from a bar on, up to the next change behind it. */
export function withPatternFrom(
  course: PatternCourse,
  bar: number,
  patternId: PatternId | undefined,
): PatternCourse {
  return withoutEcho([
    ...course.filter((change) => change.bar < bar),
    changeTo(bar, patternId),
    ...course.filter((change) => change.bar > bar),
  ]);
}

/** The course without a change at a bar: what is played before it goes on. What the first bar plays stays. */
export function withoutChangeAt(course: PatternCourse, bar: number): PatternCourse {
  return bar === 0 ? course : withoutEcho(course.filter((change) => change.bar !== bar));
}

/**
 * The course after its bars were moved: each change goes with its bar (`movedBar`), or, where that
 * was taken out, to the bar that follows it. Where two come to one bar the later one is played;
 * changes at or behind `bars` are gone.
 */
export function movedCourse(
  course: PatternCourse,
  movedBar: (bar: number) => number,
  bars: number,
): PatternCourse {
  const moved = course
    .map(({ bar, patternId }) => changeTo(bar === 0 ? 0 : Math.max(0, movedBar(bar)), patternId))
    .filter(({ bar }) => bar === 0 || bar < bars);
  return withoutEcho(moved.filter(({ bar }, i) => moved[i + 1]?.bar !== bar));
}
