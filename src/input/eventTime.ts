import type { Seconds } from '../core/time/ticks.ts';

/**
 * One moment on two clocks, as `AudioContext.getOutputTimestamp` tells it: which time of the context
 * was heard (left the output) at `performanceTime`, in milliseconds of the page's clock.
 */
export type OutputTimestamp = { readonly contextTime: Seconds; readonly performanceTime: number };

/**
 * The time of the context that was heard when something happened at a time of the page's clock, in
 * milliseconds as events are stamped. Both clocks run alike, so an event may be a little older or
 * newer than the timestamp.
 */
export function audioTimeOf(timeStampMs: number, outputTimestamp: OutputTimestamp): Seconds {
  const { contextTime, performanceTime } = outputTimestamp;
  return contextTime + (timeStampMs - performanceTime) / 1000;
}
