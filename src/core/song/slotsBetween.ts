import type { Ticks } from '../time/ticks.ts';
import type { ChordSlot } from './song.ts';

/**
 * What of slots that lie end to end sounds between two ticks, counted from the start of the first. A
 * chord that began before `from` or lasts beyond `to` is cut to what lies between.
 */
export function slotsBetween<S extends ChordSlot>(
  slots: readonly S[],
  from: Ticks,
  to: Ticks,
): S[] {
  let endTick = 0;
  return slots
    .map((slot) => {
      const startTick = endTick;
      endTick += slot.durationTicks;
      return { ...slot, durationTicks: Math.min(endTick, to) - Math.max(startTick, from) };
    })
    .filter((slot) => slot.durationTicks > 0);
}
