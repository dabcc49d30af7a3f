import type { Timeline } from '../song/timeline.ts';
import type { Ticks } from '../time/ticks.ts';
import type { LaidBar, LaidBars } from './laidBars.ts';

/** Anything that a pattern places in time: a hit of a hand, a stroke of a source. */
export type PatternEvent = { readonly at: Ticks; readonly length: Ticks };

/** An event inside one bar: `inBar` counts from the bar line, `patternTick` from the pattern's start. */
export type BarEvent<E> = { readonly event: E; readonly inBar: Ticks; readonly patternTick: Ticks };

/** An event on the timeline, unswung; its end is where it is let go. */
export type PlacedEvent<E> = {
  readonly event: E;
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly patternTick: Ticks;
};

/** Whether a timeline is played once or round and round, its last bar leading into its first. */
export type Course = 'once' | 'loop';

/** Those of a pattern's events that stand in one of its bars. */
export function eventsInBar<E extends PatternEvent>(
  events: readonly E[],
  bar: number,
  barLength: Ticks,
): BarEvent<E>[] {
  const from = bar * barLength;
  return events
    .filter((event) => event.at >= from && event.at < from + barLength)
    .map((event) => ({ event, inBar: event.at - from, patternTick: event.at }));
}

/**
 * The events of one part on the timeline, ascending. Each lasts as long as it is written, also over
 * bar lines, except that it ends
 * where a bar without a pattern begins;
 * at the part's first event after a seam, which is a bar line where the pattern does not go on
 * (it starts over, changes, or its ending comes): what is tied over a seam gives way to what is
 * struck there;
 * at the end of a timeline played once. In a loop the end is a seam like any other, and an event
 * may end later than the timeline.
 */
export function placeEvents<E extends PatternEvent>(
  timeline: Timeline,
  laid: LaidBars,
  course: Course,
  eventsOf: (bar: LaidBar) => readonly BarEvent<E>[],
): PlacedEvent<E>[] {
  const perBar = laid.map((bar) => (bar ? eventsOf(bar) : []).map((e) => placed(e, bar!)));
  const starts = perBar.flat().map((event) => event.startTick);
  return perBar.flatMap((events, bar) =>
    events.map((event) => ({
      ...event,
      endTick: Math.min(event.endTick, lastEnd(event.endTick, bar, starts, timeline, laid, course)),
    })),
  );
}

function placed<E extends PatternEvent>(
  { event, inBar, patternTick }: BarEvent<E>,
  { bar }: LaidBar,
): PlacedEvent<E> {
  const startTick = bar.startTick + inBar;
  return { event, startTick, endTick: startTick + event.length, patternTick };
}

/** The latest that an event of a bar may end: see `placeEvents`. */
function lastEnd(
  endTick: Ticks,
  bar: number,
  starts: readonly Ticks[],
  timeline: Timeline,
  laid: LaidBars,
  course: Course,
): Ticks {
  let last = Number.POSITIVE_INFINITY;
  for (let next = bar + 1; next < laid.length; next++) {
    const barLine = timeline.bars[next]!.startTick;
    if (barLine >= Math.min(endTick, last)) return last;
    const following = laid[next];
    if (!following) return barLine;
    if (!following.goesOn) last = Math.min(last, starts.find((start) => start >= barLine) ?? last);
  }
  const end = timeline.lengthTicks;
  const again = course === 'loop' && laid[0] ? end + (starts[0] ?? end) : end;
  return Math.min(last, again);
}
