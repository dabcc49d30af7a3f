import { barTicks } from '../time/meter.ts';
import type { Section, Song } from './song.ts';

/** More bars than any song has: of a section, and of a song as it is played. What is longer is refused before it is laid out. */
export const MOST_BARS = 10_000;

type Written = Pick<Section, 'meter' | 'barMeters' | 'slots'>;

/**
 * How many bars the chords of a section, or of another ending in its meter, fill; undefined where
 * they end inside a bar. Beyond `MOST_BARS` no more are counted: the number is then one more.
 */
export function filledBars({ meter, barMeters, slots }: Written): number | undefined {
  const length = slots.reduce((ticks, slot) => ticks + slot.durationTicks, 0);
  const others = new Map(barMeters.map((other) => [other.bar, other.meter]));
  let bars = 0;
  let end = 0;
  while (end < length && bars <= MOST_BARS) end += barTicks(others.get(bars++) ?? meter);
  return end === length || bars > MOST_BARS ? bars : undefined;
}

/**
 * How many bars a song is as it is played, other endings in place of what they replace. Sections that
 * are longer than `MOST_BARS` count as one more; entries that name no section, and chords that end
 * inside a bar, count nothing.
 */
export function playedBars({ sections, form }: Pick<Song, 'sections' | 'form'>): number {
  const written = new Map(
    sections.map((section) => [section.id, { section, bars: filledBars(section) ?? 0 }]),
  );
  return form.reduce((total, { sectionId, ending }) => {
    const played = written.get(sectionId);
    if (!played) return total;
    if (!ending) return total + played.bars;
    const { meter } = played.section;
    const own = Math.max(0, played.bars - ending.replacesBars);
    return total + own + (filledBars({ meter, ...ending }) ?? 0);
  }, 0);
}
