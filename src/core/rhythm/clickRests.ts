import type { TimelineBar } from '../song/timeline.ts';
import type { Ticks } from '../time/ticks.ts';
import type { Note } from './note.ts';

/** A click that falls silent to test the inner pulse: so many bars sound, then so many rest, round and round. Both from 1. */
export type ClickRests = { readonly sounding: number; readonly resting: number };

/** The most bars that sound or rest at a time. */
export const LONGEST_CLICK_REST = 64;

/**
 * How many bars the click still rests, the bar included, in the bar that is `bar` bars after the
 * beginning of what plays (0-based); 0 where it sounds.
 */
export function restsLeft({ sounding, resting }: ClickRests, bar: number): number {
  const round = sounding + resting;
  const inRound = bar % round;
  return inRound < sounding ? 0 : round - inRound;
}

/**
 * The notes without the clicks in bars that rest. `bars` are those that are played, ascending, and
 * `barsBefore` is how many were played before them since the beginning of what plays.
 */
export function withClickRests(
  notes: readonly Note[],
  bars: readonly Pick<TimelineBar, 'startTick'>[],
  rests: ClickRests,
  barsBefore: number,
): Note[] {
  const isResting = (tick: Ticks) =>
    restsLeft(rests, barsBefore + bars.findLastIndex((bar) => bar.startTick <= tick)) > 0;
  return notes.filter((note) => note.part !== 'click' || !isResting(note.startTick));
}
