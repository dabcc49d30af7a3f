import type { Seconds } from '../core/time/ticks.ts';
import type { AudioRoom } from './context.ts';

/**
 * One moment on two clocks: which time of the room's context is heard (leaves the output) at
 * `performanceTime`, in milliseconds of the page's clock, as events are stamped. Steady to some
 * tenths of a millisecond where the browser tells it; where it does not, the clock less the output's
 * latency, which moves in blocks of up to some 20 ms.
 */
export function outputTimestampOf(room: AudioRoom): {
  readonly contextTime: Seconds;
  readonly performanceTime: number;
} {
  const { contextTime, performanceTime } = room.context.getOutputTimestamp?.() ?? {};
  if (contextTime && performanceTime) return { contextTime, performanceTime };
  return {
    contextTime: room.clock() - room.outputLatencySec(),
    performanceTime: performance.now(),
  };
}
