import type { Clock } from '../core/time/clock.ts';
import type { Seconds } from '../core/time/ticks.ts';
import type { Timer } from './workerTimer.ts';

/** How far ahead of the clock events are handed over: several ticks, so that a few may come late. */
export const LOOK_AHEAD_SEC: Seconds = 0.2;

/** Something that is due at a time of the clock. */
export type DueEvent = { readonly atSec: Seconds };

/** Hands over events shortly before they are due, each once, in order of time. */
export type Scheduler<E extends DueEvent> = {
  /** Begins to hand over, at once and with every tick. */
  start(): void;
  /** Ends handing over and forgets what was not handed over. */
  stop(): void;
  /** Queues events, in any order; events of one time keep the order in which they came. */
  add(events: readonly E[]): void;
  /** The events that were not handed over yet, ascending. */
  waiting(): readonly E[];
  /** Takes back every event that was not handed over yet and queues others instead, in any order. */
  replaceWaiting(events: readonly E[]): void;
  /** Hands over what is due within the look-ahead, without waiting for the next tick. */
  handOver(): void;
  /** Nothing that is due at this time or later has been handed over; −∞ before the start. */
  horizonSec(): Seconds;
};

/**
 * A scheduler over `clock` that works at every tick of `timer` and gives events to `sink`. An event
 * that is queued too late, or finds the timer late, is handed over as soon as possible. `sink` may
 * call the scheduler's own methods.
 */
export function createScheduler<E extends DueEvent>(
  clock: Clock,
  timer: Pick<Timer, 'start' | 'stop'>,
  sink: (event: E) => void,
): Scheduler<E> {
  let queue: readonly E[] = [];
  let next = 0;
  let isRunning = false;
  let horizon = Number.NEGATIVE_INFINITY;

  const waiting = () => queue.slice(next);

  function replaceWaiting(events: readonly E[]): void {
    queue = events.toSorted((a, b) => a.atSec - b.atSec);
    next = 0;
  }

  function handOver(): void {
    if (!isRunning) return;
    horizon = Math.max(horizon, clock() + LOOK_AHEAD_SEC);
    for (let event = queue[next]; event && event.atSec < horizon; event = queue[next]) {
      next++;
      sink(event);
    }
  }

  return {
    start() {
      isRunning = true;
      timer.start(handOver);
      handOver();
    },
    stop() {
      isRunning = false;
      horizon = Number.NEGATIVE_INFINITY;
      timer.stop();
      replaceWaiting([]);
    },
    add: (events) => replaceWaiting([...waiting(), ...events]),
    waiting,
    replaceWaiting,
    handOver,
    horizonSec: () => horizon,
  };
}
