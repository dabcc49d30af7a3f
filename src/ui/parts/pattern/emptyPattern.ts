import type { PatternId } from '../../../core/ids.ts';
import type { Division, Pattern } from '../../../core/rhythm/pattern.ts';
import { STRAIGHT } from '../../../core/rhythm/swing.ts';
import { beatLengths, type Meter } from '../../../core/time/meter.ts';
import { TICKS_PER_QUARTER } from '../../../core/time/ticks.ts';

/** How a beat is first divided: a dotted quarter in three, any other in halves. */
function firstDivision(beatTicks: number): Division {
  return beatTicks === 1.5 * TICKS_PER_QUARTER ? 3 : 2;
}

/** A pattern of one bar in which nothing is played yet, divided in eighths. */
export function emptyPattern(id: PatternId, name: string, meter: Meter): Pattern {
  return {
    id,
    name,
    meter,
    bars: 1,
    divisions: beatLengths(meter).map(firstDivision),
    swing: STRAIGHT,
    sources: [],
    left: [],
    right: [],
  };
}
