import type { Timeline } from '../song/timeline.ts';
import { barTicks, beatLengths, formatMeter, type Meter, sameMeter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { Pattern } from './pattern.ts';
import type { PatternAt } from './patternAt.ts';

type Placed = { readonly at: Ticks; readonly length: Ticks };

/** Whether the felt beats of two meters are all of one length, so that one can be counted in the other. */
function haveLikeBeats(a: Meter, b: Meter): boolean {
  return new Set([...beatLengths(a), ...beatLengths(b)]).size === 1;
}

/** What stands in the first `from` ticks, as often as it takes to fill `to` ticks, cut off there. */
function filled<E extends Placed>(events: readonly E[], from: Ticks, to: Ticks): E[] {
  const first = events.filter(({ at }) => at < from);
  return Array.from({ length: Math.ceil(to / from) }, (_, round) =>
    first.map((event) => ({ ...event, at: event.at + round * from })),
  )
    .flat()
    .filter(({ at }) => at < to)
    .map((event) => ({ ...event, length: Math.min(event.length, to - event.at) }));
}

/**
 * The first bar of a pattern in a bar of another meter with like beats: cut off where that is shorter,
 * begun again where it is longer, so that a bar of 2/4 plays the first half of one in 4/4. One bar,
 * under an id of its own, without an ending. Undefined where the beats of the meters are not alike.
 */
export function patternInMeter(pattern: Pattern, meter: Meter): Pattern | undefined {
  if (!haveLikeBeats(pattern.meter, meter)) return undefined;
  const [from, to] = [barTicks(pattern.meter), barTicks(meter)];
  const { ending: _, ...rest } = pattern;
  const beats = beatLengths(pattern.meter).length;
  return {
    ...rest,
    id: `${pattern.id} in ${formatMeter(meter)}`,
    meter,
    bars: 1,
    divisions: beatLengths(meter).map((_beat, i) => pattern.divisions[i % beats] ?? 1),
    left: filled(pattern.left, from, to),
    right: filled(pattern.right, from, to),
    sources: pattern.sources.map((source) => ({
      ...source,
      strokes: filled(source.strokes, from, to),
    })),
  };
}

/**
 * The same patterns where their meter is that of the bar. In a section that has bars in its pattern's
 * meter, a bar of another meter takes what `patternInMeter` makes of the pattern, so that an odd bar
 * is no hole in the groove; the hands rest in all other bars.
 */
export function patternsThatFit(patternAt: PatternAt, timeline: Timeline): PatternAt {
  const made = new Map<string, Pattern | undefined>();
  const inMeter = (pattern: Pattern, meter: Meter) => {
    const name = `${formatMeter(meter)} ${pattern.id}`;
    if (!made.has(name)) made.set(name, patternInMeter(pattern, meter));
    return made.get(name);
  };
  const metersOf = timeline.sections.map((_, section) => [
    ...new Set(
      timeline.bars.filter((bar) => bar.section === section).map((bar) => formatMeter(bar.meter)),
    ),
  ]);
  return (bar, index) => {
    const pattern = patternAt(bar, index);
    if (!pattern || sameMeter(pattern.meter, bar.meter)) return pattern;
    const isOddBar = metersOf[bar.section]?.includes(formatMeter(pattern.meter));
    return isOddBar ? inMeter(pattern, bar.meter) : undefined;
  };
}
