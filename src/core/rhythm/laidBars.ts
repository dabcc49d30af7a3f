import { err, ok, type Result } from '../result.ts';
import { barAt, type Timeline, type TimelineBar } from '../song/timeline.ts';
import { barTicks, sameMeter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { endingBar, type Pattern } from './pattern.ts';
import type { PatternAt } from './patternAt.ts';
import { patternSwing } from './patternSwing.ts';

/** A pattern cannot be played in a bar of another meter; `bar` counts the timeline's bars from 0. */
export type NoPatternForMeter = { readonly kind: 'no-pattern-for-meter'; readonly bar: number };

/**
 * One bar of the timeline with the bar of a pattern that is played in it. `patternBar` is 0-based;
 * `isEnding` where the hands play the pattern's ending instead; `goesOn` where the bar before
 * played the bar of the same pattern that comes before, so that ties into this bar are meant.
 */
export type LaidBar = {
  readonly bar: TimelineBar;
  readonly pattern: Pattern;
  readonly patternBar: number;
  readonly isEnding: boolean;
  readonly goesOn: boolean;
};

/** Each bar of a timeline with what is played in it; undefined where the hands rest. */
export type LaidBars = readonly (LaidBar | undefined)[];

/**
 * Lays patterns over a timeline, bar by bar. A pattern begins with its first bar where a section
 * begins, where another pattern (by its id) was played before, and after a rest; from there on its
 * bars follow each other round and round, so a section's end cuts it short. The last bar of a
 * section takes the pattern's ending, if it has one.
 */
export function layBars(
  timeline: Timeline,
  patternAt: PatternAt,
): Result<LaidBars, NoPatternForMeter> {
  const laid: (LaidBar | undefined)[] = [];
  for (const [index, bar] of timeline.bars.entries()) {
    const pattern = patternAt(bar, index);
    if (pattern && !sameMeter(pattern.meter, bar.meter))
      return err({ kind: 'no-pattern-for-meter', bar: index });
    laid.push(pattern && laidBar(timeline, index, pattern, laid[index - 1]));
  }
  return ok(laid);
}

function laidBar(
  timeline: Timeline,
  index: number,
  pattern: Pattern,
  before: LaidBar | undefined,
): LaidBar {
  const bar = timeline.bars[index]!;
  const sameRun = before?.pattern.id === pattern.id && before.bar.section === bar.section;
  const isLast = timeline.bars[index + 1]?.section !== bar.section;
  const isEnding = isLast && pattern.ending !== undefined;
  return {
    bar,
    pattern,
    patternBar: before && sameRun ? (before.patternBar + 1) % pattern.bars : 0,
    isEnding,
    goesOn: sameRun && !isEnding,
  };
}

/**
 * Where a straight position of the timeline sounds: swung as the pattern of its bar is, unless its
 * beat is divided into a tuplet there. Positions in bars without a pattern stay; those outside the
 * timeline are swung as if it were played round and round.
 */
export function swingOf(timeline: Timeline, laid: LaidBars): (tick: Ticks) => Ticks {
  const laidAt = new Map(timeline.bars.map((bar, index) => [bar, laid[index]]));
  const bars = new Map<Pattern, PlayedSwing>();
  for (const played of laid)
    if (played && !bars.has(played.pattern)) bars.set(played.pattern, playedSwing(played.pattern));
  return (tick) => {
    const roundsTicks = Math.floor(tick / timeline.lengthTicks) * timeline.lengthTicks;
    const bar = barAt(timeline, tick - roundsTicks);
    const played = bar && laidAt.get(bar);
    const swings = played && bars.get(played.pattern);
    if (!swings) return tick;
    const { pattern, patternBar, isEnding } = played;
    const barStart = roundsTicks + bar.startTick;
    if (isEnding) return barStart + swings.inEnding(tick - barStart);
    const patternStart = barStart - patternBar * barTicks(pattern.meter);
    return patternStart + swings.inBars(tick - patternStart);
  };
}

/** Where straight places of a pattern's bars, and of its ending, sound: see `patternSwing`. */
type PlayedSwing = Readonly<Record<'inBars' | 'inEnding', (tick: Ticks) => Ticks>>;

function playedSwing(pattern: Pattern): PlayedSwing {
  const inBars = patternSwing(pattern);
  const ending = endingBar(pattern);
  return { inBars, inEnding: ending ? patternSwing(ending) : inBars };
}
