import { barAt, type ChordSpan, chordAt, type Timeline } from '../song/timeline.ts';
import { beatLengths, beatStarts } from '../time/meter.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import type { Course } from './placedEvents.ts';

/**
 * The chords of a timeline as a line that parts play along. Places count the timeline's chord spans
 * from 0; in a loop they go on into the next time round, so that place n + 1 of n chords is the
 * second chord again, one timeline later.
 */
export type ChordLine = {
  /** Number of chord spans in the timeline. */
  readonly count: number;
  /** Place of the chord that is written at a tick, −1 where none is. */
  readonly placeAt: (tick: Ticks) => number;
  /** The chord span at a place; undefined past the end of a timeline played once. */
  readonly spanAt: (place: number) => ChordSpan | undefined;
  /** Where the chord at a place starts; undefined where there is none. */
  readonly startOf: (place: number) => Ticks | undefined;
  /** Length of the felt beat in which a tick lies. */
  readonly beatTicksAt: (tick: Ticks) => Ticks;
};

/** See the type. `course` says whether the last chord leads back into the first. */
export function chordLine(timeline: Timeline, course: Course): ChordLine {
  const { chords, lengthTicks } = timeline;
  const count = chords.length;
  const places = new Map(chords.map((span, place) => [span, place]));
  const spanAt = (place: number) =>
    place < count || course === 'loop' ? chords[place % count] : undefined;
  return {
    count,
    spanAt,
    placeAt: (tick) => {
      const span = chordAt(timeline, tick);
      return span ? (places.get(span) ?? -1) : -1;
    },
    startOf: (place) => {
      const span = spanAt(place);
      return span && span.startTick + Math.floor(place / count) * lengthTicks;
    },
    beatTicksAt: (tick) => beatTicksAt(timeline, tick % lengthTicks),
  };
}

function beatTicksAt(timeline: Timeline, tick: Ticks): Ticks {
  const bar = barAt(timeline, tick);
  if (!bar) return TICKS_PER_QUARTER;
  const beat = beatStarts(bar.meter).findLastIndex((start) => start <= tick - bar.startTick);
  return beatLengths(bar.meter)[beat] ?? TICKS_PER_QUARTER;
}
