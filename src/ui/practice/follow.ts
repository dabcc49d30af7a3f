import type { BarRange } from '../../app/score.ts';
import type { Timeline } from '../../core/song/timeline.ts';
import type { Ticks } from '../../core/time/ticks.ts';

/** A section's name as it is called at this playing: “Verse”, and “Verse, 2nd time” when it returns. */
export function sectionName(timeline: Timeline, section: number): string {
  const span = timeline.sections[section];
  if (!span) return '';
  return span.repeat === 0 ? span.name : `${span.name}, ${ordinal(span.repeat + 1)} time`;
}

function ordinal(n: number): string {
  const tens = n % 100;
  const ending = tens > 10 && tens < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${ending}`;
}

/** The next chord that differs from the one at `index`, as an index of the timeline's chords; undefined at the end. */
export function nextChordIndex(timeline: Timeline, index: number): number | undefined {
  const now = timeline.chords[index]?.chord;
  const next = timeline.chords.findIndex(
    (span, i) => i > index && JSON.stringify(span.chord) !== JSON.stringify(now),
  );
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

/** The bars of one playing of a section. */
export function sectionRange(timeline: Timeline, section: number): BarRange {
  const firstBar = timeline.bars.findIndex((bar) => bar.section === section);
  const endBar = timeline.bars.findLastIndex((bar) => bar.section === section) + 1;
  return { firstBar, endBar };
}
