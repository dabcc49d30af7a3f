import { barTicks, beatLengths, beatStarts, type Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { barClicks, CLICK_VELOCITY, type ClickSound } from './click.ts';
import type { Note } from './note.ts';

/** How a count-in is heard: with the sound of the click, or counted by a voice. */
export type CountInManner = {
  readonly spoken?: boolean;
  readonly sound?: ClickSound;
};

/** The highest number that is spoken; beats beyond it are clicked. */
export const LAST_SPOKEN = 12;

/**
 * The beats of a count-in's bar that are counted, 0-based, each with the number that is said. Two
 * bars of four felt beats begin in half the time, “one, two, | one two three four” (common
 * practice); all others number every beat.
 */
function countedBeats(beats: number, bars: number, bar: number): { beat: number; says: number }[] {
  const step = beats === 4 && bars === 2 && bar === 0 ? 2 : 1;
  return Array.from({ length: beats / step }, (_, i) => ({ beat: i * step, says: i + 1 }));
}

function spokenBar(startTick: Ticks, meter: Meter, bars: number, bar: number, clicks: Note[]) {
  const starts = beatStarts(meter);
  const lengths = beatLengths(meter);
  return countedBeats(starts.length, bars, bar).flatMap(({ beat, says }): Note[] => {
    const tick = startTick + starts[beat]!;
    const click = clicks.find((each) => each.startTick === tick);
    if (!click) return [];
    if (says > LAST_SPOKEN) return [click];
    const velocity = Math.max(click.velocity, CLICK_VELOCITY.stressed);
    return [{ ...click, says, velocity, durationTicks: lengths[beat]! }];
  });
}

/**
 * So many bars (0 or more) of count-in before tick 0, ascending, at negative ticks: every felt beat
 * clicked, or spoken as its number. A spoken number is a click with `says`, as long as its beat; the
 * first of each bar is a little louder than the others.
 */
export function countIn(
  meter: Meter,
  bars: number,
  { spoken = false, sound }: CountInManner = {},
): Note[] {
  return Array.from({ length: bars }, (_, bar) => bar).flatMap((bar) => {
    const startTick = (bar - bars) * barTicks(meter);
    const clicks = barClicks(startTick, meter, { beats: 'all', ...(sound && { sound }) });
    return spoken ? spokenBar(startTick, meter, bars, bar, clicks) : clicks;
  });
}
