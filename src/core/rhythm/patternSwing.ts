import { barTicks } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { type Pattern, patternBeats } from './pattern.ts';
import { swungTick, takesSwing } from './swing.ts';

/**
 * Where a straight place of a pattern sounds, in ticks from the pattern's start: swung, unless its
 * beat is divided into a tuplet. Places before and after the pattern are taken round it.
 */
export function swungInPattern(
  pattern: Pick<Pattern, 'meter' | 'bars' | 'divisions' | 'swing'>,
  tick: Ticks,
): Ticks {
  const end = pattern.bars * barTicks(pattern.meter);
  const roundsTicks = Math.floor(tick / end) * end;
  const inside = tick - roundsTicks;
  const beat = patternBeats(pattern).findLast(({ start }) => start <= inside);
  if (!beat || !takesSwing(beat.length, beat.division)) return tick;
  return roundsTicks + swungTick(inside, pattern.meter, pattern.swing);
}
