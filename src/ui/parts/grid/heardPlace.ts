import type { PlaybackPosition } from '../../../app/playbackPosition.ts';
import type { LaidBars } from '../../../core/rhythm/laidBars.ts';
import { type Pattern, patternTicks } from '../../../core/rhythm/pattern.ts';
import { barTicks, sameMeter } from '../../../core/time/meter.ts';
import { straightTick } from './straightTick.ts';

/** The moment that is heard, as far as a place in a pattern follows from it. */
type Heard = Pick<PlaybackPosition, 'tick' | 'bar' | 'countingIn'>;

/**
 * Where in its own straight grid, in ticks, a pattern is heard that is played round and round from
 * tick 0 on; undefined in a count-in.
 */
export function placeInRounds({ tick, countingIn }: Heard, pattern: Pattern): number | undefined {
  if (countingIn) return undefined;
  return straightTick(tick % patternTicks(pattern), pattern.meter, pattern.swing);
}

/**
 * Where in its own straight grid, in ticks, a pattern is heard in the song, whose bars play `laid`;
 * undefined in a count-in, in bars of other patterns or meters, and in those that play its ending.
 */
export function placeInSong(
  { tick, bar, countingIn }: Heard,
  pattern: Pattern,
  laid: LaidBars,
): number | undefined {
  const here = bar === undefined || countingIn ? undefined : laid[bar];
  if (!here || here.isEnding || here.pattern.id !== pattern.id) return undefined;
  if (!sameMeter(here.pattern.meter, pattern.meter)) return undefined;
  const atBar = here.patternBar * barTicks(pattern.meter);
  return straightTick(atBar + tick - here.bar.startTick, pattern.meter, pattern.swing);
}
