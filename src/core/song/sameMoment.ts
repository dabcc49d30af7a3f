import { barTicks } from '../time/meter.ts';
import { barAt, type SectionSpan, sectionAt, type Timeline } from './timeline.ts';

/** Bars of a timeline by index, the end exclusive. */
type Bars = { readonly firstBar: number; readonly endBar: number };

/** Place in a timeline of a playing's first bar. */
function firstBarOf({ sections }: Timeline, place: number): number {
  return sections.slice(0, place).reduce((bars, span) => bars + span.bars, 0);
}

/** Place in a timeline of the playing that answers to `span`; −1 where it is gone. Playings are the same by their form entry. */
function samePlaying({ sections }: Timeline, span: SectionSpan): number {
  return sections.findIndex(({ formEntryId }) => formEntryId === span.formEntryId);
}

/** The bar of `after`, by index, in which music goes on that was in a bar of a playing of `before`. */
function sameBar(before: Timeline, after: Timeline, span: SectionSpan, bar: number): number {
  const place = samePlaying(after, span);
  const own = after.sections[place];
  if (own) return firstBarOf(after, place) + Math.min(bar, own.bars - 1);
  const following = before.sections
    .slice(before.sections.indexOf(span) + 1)
    .map((other) => samePlaying(after, other))
    .find((other) => other >= 0);
  return following === undefined ? after.bars.length : firstBarOf(after, following);
}

/**
 * Where music that is at `tick` of `before` goes on in `after`, the timeline of the same song once it
 * was edited: in the same bar of the same playing of a section, just as far from the bar line, so that
 * the pulse goes on. A playing that has lost that bar goes on in its last one, one that is gone in the
 * first bar of the next that is left; where none follows, at the end of `after`. In a bar that is too
 * short to reach so far, the time counts on from its start again. A tick before the beginning stays,
 * one behind the end keeps its distance from the end.
 */
export function sameMoment(before: Timeline, after: Timeline, tick: number): number {
  if (before === after || tick < 0) return tick;
  const bar = barAt(before, tick);
  const span = sectionAt(before, tick);
  if (!bar || !span) return after.lengthTicks + (tick - before.lengthTicks);
  const there = after.bars[sameBar(before, after, span, bar.barInSection)];
  if (!there) return after.lengthTicks;
  return there.startTick + ((tick - bar.startTick) % barTicks(there.meter));
}

/**
 * The bars of `after` that answer to marked bars of `before`, two timelines of one song before and
 * after an edit. What reached to the end of a playing still does so. Undefined where the playing of
 * the first or of the last bar is gone.
 */
export function sameBars(before: Timeline, after: Timeline, marked: Bars): Bars | undefined {
  if (before === after) return marked;
  const first = before.bars[marked.firstBar];
  const last = before.bars[Math.min(marked.endBar, before.bars.length) - 1];
  const [from, to] = [first, last].map((bar) => bar && before.sections[bar.section]);
  if (!first || !last || !from || !to) return undefined;
  const place = samePlaying(after, to);
  const end = after.sections[place];
  if (samePlaying(after, from) < 0 || !end) return undefined;
  const firstBar = sameBar(before, after, from, first.barInSection);
  const endBar =
    last.barInSection + 1 === to.bars
      ? firstBarOf(after, place) + end.bars
      : sameBar(before, after, to, last.barInSection) + 1;
  return firstBar < endBar ? { firstBar, endBar } : undefined;
}
