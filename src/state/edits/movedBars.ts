import { keptBars, playedChart, sectionBars } from '../../core/song/form.ts';
import {
  changeTo,
  choiceOf,
  movedCourse,
  type PatternCourse,
  patternCourse,
} from '../../core/song/patternCourse.ts';
import { slotsBetween } from '../../core/song/slotsBetween.ts';
import type { FormEntry, OtherEnding, PatternChoice, Section, Song } from '../../core/song/song.ts';
import { barTicks } from '../../core/time/meter.ts';
import { mapped, withParts } from './edit.ts';

/** Where a bar (0-based) of a chart stands after an edit of the chart; a bar that is gone: where the next one stands. */
export type MovedBar = (bar: number) => number;

/** Bars that were added or taken out: those from `from` on (0-based, before the edit) move by `by`. */
export type BarsMoved = { readonly from: number; readonly by: number };

export function movedAsSaid({ from, by }: BarsMoved): MovedBar {
  return (bar) => (bar >= from ? bar + by : bar);
}

/** Bars that each become so many. */
export function movedByCounts(counts: readonly number[]): MovedBar {
  return (bar) => counts.slice(0, bar).reduce((total, count) => total + count, 0);
}

/** What stands in each bar of a chart, to tell whether two bars are alike. */
function barContents(section: Section): string[] {
  return sectionBars(section).map(({ startTick, meter }) => {
    const slots = slotsBetween(section.slots, startTick, startTick + barTicks(meter));
    return JSON.stringify([meter, slots.map(({ chord, durationTicks }) => [chord, durationTicks])]);
  });
}

/**
 * Where bars went between two charts of a section, as far as like bars run from the start and from the
 * end: the bars from the first of the like ones at the end move with them, all others stay. Nothing
 * moves where the bars are as many as before.
 */
export function movedAsAlike(before: Section, after: Section): MovedBar {
  const [old, now] = [barContents(before), barContents(after)];
  const by = now.length - old.length;
  if (by === 0) return (bar) => bar;
  const shorter = Math.min(old.length, now.length);
  const unlike = old.findIndex((content, i) => content !== now[i]);
  const fromStart = Math.min(unlike < 0 ? shorter : unlike, shorter);
  let fromEnd = 0;
  while (fromEnd < shorter - fromStart && old.at(-1 - fromEnd) === now.at(-1 - fromEnd)) fromEnd++;
  return movedAsSaid({ from: old.length - fromEnd, by });
}

/** A section or a playing with its patterns as a course says; a list of changes that would be empty goes. */
export function withCourse<T extends PatternChoice>(chooser: T, course: PatternCourse): T {
  const { patternId, patternChanges } = choiceOf(course);
  return withParts<PatternChoice>(chooser, { patternId, patternChanges }) as T;
}

/**
 * A playing with patterns of its own as a course says. Where it begins as its section does, it goes on
 * doing so; nothing where its hands should rest from the first bar, which a playing cannot say.
 */
export function entryWithCourse(
  entry: FormEntry,
  section: Section,
  [first, ...changes]: PatternCourse,
): FormEntry {
  const begins = first?.patternId;
  if (begins === section.patternId)
    return withParts(entry, { patternId: undefined, patternChanges: changes });
  if (begins === undefined) return entry;
  return withParts(entry, {
    patternId: begins,
    patternChanges: changes.length === 0 ? undefined : changes,
  });
}

/** An other ending after an edit of its section, and where its own bars went. */
type EndingAfter = { readonly ending: OtherEnding; readonly movedBar: MovedBar };

const endingAsBefore = (ending: OtherEnding): EndingAfter => ({ ending, movedBar: (bar) => bar });

function playingAfter(
  entry: FormEntry,
  before: Section,
  after: Section,
  movedBar: MovedBar,
  endingAfter: (ending: OtherEnding) => EndingAfter,
): FormEntry {
  const next = entry.ending && endingAfter(entry.ending);
  const ended = withParts(entry, { ending: next?.ending });
  const { patternChanges = [] } = entry;
  if (patternChanges.length === 0) return ended;
  const [kept, keptAfter] = [keptBars(before, entry.ending), keptBars(after, next?.ending)];
  const moved: MovedBar = (bar) => {
    if (bar >= kept) return keptAfter + (next ? next.movedBar(bar - kept) : 0);
    const to = movedBar(bar);
    return to < keptAfter ? to : Number.POSITIVE_INFINITY;
  };
  const begins = changeTo(0, entry.patternId ?? before.patternId);
  const bars = sectionBars(playedChart(after, next?.ending)).length;
  const course = movedCourse([begins, ...patternChanges], moved, bars);
  return entryWithCourse(ended, before, course);
}

/**
 * The song with `after` in place of its section `before`, whose bars moved: changes of the pattern go
 * with their bars, in the section and in its playings. A change whose bar is taken out goes to the bar
 * that follows it, one that has none is gone. `endingAfter` says what becomes of other endings.
 */
export function withSectionMoved(
  song: Song,
  before: Section,
  after: Section,
  movedBar: MovedBar,
  endingAfter: (ending: OtherEnding) => EndingAfter = endingAsBefore,
): Song {
  const hasChanges = (before.patternChanges ?? []).length > 0;
  const moved = hasChanges
    ? withCourse(after, movedCourse(patternCourse(before), movedBar, sectionBars(after).length))
    : after;
  return withParts(song, {
    sections: mapped(song.sections, (each) => (each === before ? moved : each)),
    form: mapped(song.form, (entry) =>
      entry.sectionId === before.id
        ? playingAfter(entry, before, after, movedBar, endingAfter)
        : entry,
    ),
  });
}
