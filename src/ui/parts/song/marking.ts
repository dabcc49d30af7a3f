import type { BarRange } from '../../../app/score.ts';
import type { FormEntryId, SectionId } from '../../../core/ids.ts';
import type { FormEntry } from '../../../core/song/song.ts';
import type { Timeline } from '../../../core/song/timeline.ts';

/** The bars of the timeline that the playing at place `place` of the form takes. */
export function entryBars(timeline: Timeline, place: number): BarRange {
  const before = timeline.sections.slice(0, place);
  const firstBar = before.reduce((total, span) => total + span.bars, 0);
  return { firstBar, endBar: firstBar + (timeline.sections[place]?.bars ?? 0) };
}

/**
 * What of a marked range lies in one playing, as bars of its section (end exclusive); undefined where
 * nothing does.
 */
export function markedInEntry(
  timeline: Timeline,
  place: number,
  range: BarRange | undefined,
): BarRange | undefined {
  const { firstBar, endBar } = entryBars(timeline, place);
  if (!range || range.endBar <= firstBar || range.firstBar >= endBar) return undefined;
  return {
    firstBar: Math.max(range.firstBar, firstBar) - firstBar,
    endBar: Math.min(range.endBar, endBar) - firstBar,
  };
}

/** The number of a playing, as it stands after its section's name; empty where the section is played once. */
export function playingNumber({ sections }: Pick<Timeline, 'sections'>, place: number): string {
  const span = sections[place];
  const playings = sections.filter((other) => other.sectionId === span?.sectionId).length;
  if (!span || playings === 1) return '';
  return /\d$/.test(span.name) ? `(${span.repeat + 1})` : String(span.repeat + 1);
}

/** The name of a playing: that of its section, numbered where the section is played more than once. */
export function playingName(timeline: Pick<Timeline, 'sections'>, place: number): string {
  return `${timeline.sections[place]?.name ?? ''} ${playingNumber(timeline, place)}`.trimEnd();
}

function barsText(first: number, end: number): string {
  return end - first === 1 ? `bar ${first + 1}` : `bars ${first + 1} to ${end}`;
}

/**
 * A marked range in words: “Verse 2”, “Verse 2, bars 3 to 6”, or “Verse 2, bar 7 to Chorus 1, bar 2”
 * where it goes over a section's end.
 */
export function markedText(timeline: Timeline, range: BarRange): string {
  const first = timeline.bars[range.firstBar];
  const last = timeline.bars[Math.min(range.endBar, timeline.bars.length) - 1];
  if (!first || !last) return '';
  const nameOf = (place: number) => playingName(timeline, place);
  const isWholeAtStart = first.barInSection === 0;
  const isWholeAtEnd = last.barInSection + 1 === timeline.sections[last.section]?.bars;
  if (first.section === last.section) {
    if (isWholeAtStart && isWholeAtEnd) return nameOf(first.section);
    return `${nameOf(first.section)}, ${barsText(first.barInSection, last.barInSection + 1)}`;
  }
  const from = isWholeAtStart ? '' : `, bar ${first.barInSection + 1}`;
  const to = isWholeAtEnd ? '' : `, bar ${last.barInSection + 1}`;
  return `${nameOf(first.section)}${from} to ${nameOf(last.section)}${to}`;
}

/** The bars from one to another of a playing, in either order, as a range of the timeline. */
export function rangeOfBars(
  timeline: Timeline,
  place: number,
  oneBar: number,
  otherBar: number,
): BarRange {
  const { firstBar, endBar } = entryBars(timeline, place);
  // A playing that ends otherwise can be shorter than its section.
  const within = (bar: number) => Math.min(firstBar + bar, endBar - 1);
  return {
    firstBar: within(Math.min(oneBar, otherBar)),
    endBar: within(Math.max(oneBar, otherBar)) + 1,
  };
}

/**
 * The place of the form that is meant by a chosen section and, where it returns, a chosen entry: that
 * entry if it plays the section, else the section's first playing; undefined where it is not played.
 */
export function chosenPlace(
  form: readonly FormEntry[],
  sectionId: SectionId,
  entryId: FormEntryId | undefined,
): number | undefined {
  const chosen = form.findIndex((entry) => entry.id === entryId && entry.sectionId === sectionId);
  const place = chosen < 0 ? form.findIndex((entry) => entry.sectionId === sectionId) : chosen;
  return place < 0 ? undefined : place;
}
