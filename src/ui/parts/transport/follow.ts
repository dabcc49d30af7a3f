import type { BarRange, SongRequest } from '../../../app/score.ts';
import { groupBy } from '../../../core/rhythm/groupBy.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { PatternAt } from '../../../core/rhythm/patternAt.ts';
import { patternCourse } from '../../../core/song/patternCourse.ts';
import type { ChordSpan, Timeline } from '../../../core/song/timeline.ts';
import { barTicks } from '../../../core/time/meter.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { entryBars } from '../song/marking.ts';

/** What of the song is played, how often, and which bar a jump leads to, where one was asked for. */
type SongPlayed = Pick<SongRequest, 'range' | 'times'> & {
  readonly time: number;
  readonly wantedBar?: number;
};

/** The bar that is heard after a bar: the next, the one that a jump leads to, or the first once more; undefined at the end. */
export function barAfter(
  timeline: Timeline,
  bar: number,
  { range, times, time, wantedBar }: SongPlayed,
): number | undefined {
  if (wantedBar !== undefined) return wantedBar;
  if (bar + 1 < (range?.endBar ?? timeline.bars.length)) return bar + 1;
  return times === 'until-stopped' || time < times ? (range?.firstBar ?? 0) : undefined;
}

/**
 * The next other chord that is heard, as an index of the timeline's chords, where the chord at `index`
 * sounds in the bar `bar` and the bar `after` comes next; undefined where the music ends before.
 */
export function comingChordIndex(
  timeline: Timeline,
  index: number,
  bar: number,
  after: number | undefined,
): number | undefined {
  const next = nextChordIndex(timeline, index);
  const barEnd = timeline.bars[bar + 1]?.startTick ?? timeline.lengthTicks;
  if (next !== undefined && timeline.chords[next]!.startTick < barEnd) return next;
  const afterTick = timeline.bars[after ?? -1]?.startTick;
  if (afterTick === undefined) return undefined;
  const there = timeline.chords.findLastIndex(({ startTick }) => startTick <= afterTick);
  const isSame = sameChord(timeline.chords[there], timeline.chords[index]);
  return isSame ? nextChordIndex(timeline, there) : there;
}

function sameChord(one: ChordSpan | undefined, other: ChordSpan | undefined): boolean {
  return JSON.stringify(one?.chord) === JSON.stringify(other?.chord);
}

/** The next chord that differs from the one at `index`, as an index of the timeline's chords; undefined at the end. */
export function nextChordIndex(timeline: Timeline, index: number): number | undefined {
  const now = timeline.chords[index];
  const next = timeline.chords.findIndex((span, i) => i > index && !sameChord(span, now));
  return next < 0 ? undefined : next;
}

/** How far the section still goes, in words: “3 bars left”, “last bar”, or that the count-in is on. */
export function barsLeftText(
  timeline: Timeline,
  place: { readonly tick: Ticks; readonly bar?: number },
  countingIn: boolean,
): string {
  if (countingIn) return 'Count-in';
  const bar = timeline.bars[place.bar ?? 0];
  const section = bar && timeline.sections[bar.section];
  if (!bar || !section) return '';
  const left = section.bars - bar.barInSection;
  return left === 1 ? 'last bar' : `${left} bars left`;
}

/** One bar of a section as a line to glance at: its place in the timeline and the chords that change in it. */
export type GlanceBar = { readonly bar: number; readonly chords: readonly ChordSpan[] };

/** The bars of one playing of a section with the chord changes in each; a bar without one is held over. */
export function glanceBars(timeline: Timeline, section: number): GlanceBar[] {
  return barsWithChords(timeline, entryBars(timeline, section));
}

/** Bars of a timeline with the chord changes in each; a bar without one is held over. */
export function barsWithChords(timeline: Timeline, { firstBar, endBar }: BarRange): GlanceBar[] {
  return timeline.bars.slice(firstBar, endBar).map((bar, i) => {
    const end = bar.startTick + barTicks(bar.meter);
    const changes = timeline.chords.filter(
      ({ startTick }) => startTick >= bar.startTick && startTick < end,
    );
    return { bar: firstBar + i, chords: changes };
  });
}

/** A pattern and the bars of the timeline during which it is shown. */
export type PatternInForm = { readonly pattern: Pattern; readonly bars: readonly number[] };

/**
 * The patterns of a song in order of playing; each is shown from where a playing begins with it or
 * changes to it until the next change, also in bars of another meter.
 */
export function patternsInForm(timeline: Timeline, patternAt: PatternAt): PatternInForm[] {
  const shown = timeline.sections.flatMap((span, section) => {
    const { firstBar, endBar } = entryBars(timeline, section);
    const course = patternCourse(span);
    return course.flatMap((change, i) => {
      const from = firstBar + change.bar;
      const to = firstBar + (course[i + 1]?.bar ?? endBar - firstBar);
      const bar = timeline.bars[from];
      const pattern = bar && patternAt(bar, from);
      return pattern ? [{ pattern, bars: barsBetween(from, to) }] : [];
    });
  });
  return [...groupBy(shown, ({ pattern }) => pattern)].map(([pattern, each]) => ({
    pattern,
    bars: each.flatMap(({ bars }) => bars),
  }));
}

function barsBetween(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, i) => from + i);
}
