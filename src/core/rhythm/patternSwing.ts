import { barTicks } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { type Pattern, patternBeats } from './pattern.ts';
import { swungTick, takesSwing } from './swing.ts';

/**
 * Where straight places of a pattern sound, in ticks from the pattern's start: swung, unless their
 * beat is divided into a tuplet. Places before and after the pattern are taken round it. The
 * function that is returned remembers what it was asked, so it is made once for many places.
 */
export function patternSwing(
  pattern: Pick<Pattern, 'meter' | 'bars' | 'divisions' | 'swing'>,
): (tick: Ticks) => Ticks {
  const end = pattern.bars * barTicks(pattern.meter);
  const beats = patternBeats(pattern);
  const known = new Map<Ticks, Ticks>();
  const swung = (inside: Ticks): Ticks => {
    const beat = beats.findLast(({ start }) => start <= inside);
    const moves = beat && takesSwing(beat.length, beat.division);
    return moves ? swungTick(inside, pattern.meter, pattern.swing) : inside;
  };
  return (tick) => {
    const roundsTicks = Math.floor(tick / end) * end;
    const inside = tick - roundsTicks;
    const place = known.get(inside) ?? swung(inside);
    known.set(inside, place);
    return roundsTicks + place;
  };
}
