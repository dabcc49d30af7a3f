import type { Timer } from '../../src/audio/workerTimer.ts';
import type { Clock } from '../../src/core/time/clock.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';

/** A clock and a timer that move only when a test says so. */
export type FakeTime = {
  readonly clock: Clock;
  readonly timer: Timer;
  /** Lets time pass with a tick every 25 ms, or as often as `tickSec` says. */
  pass(sec: Seconds, tickSec?: Seconds): void;
  /** Lets time pass without a tick, then ticks once: the page stood still. */
  stall(sec: Seconds): void;
  isTicking(): boolean;
};

/** Time stands at `startSec` to begin with. */
export function fakeTime(startSec: Seconds = 0): FakeTime {
  let now = startSec;
  let onTick: (() => void) | undefined;
  function stall(sec: Seconds): void {
    now += sec;
    onTick?.();
  }
  return {
    clock: () => now,
    timer: {
      start(tick) {
        onTick = tick;
      },
      stop() {
        onTick = undefined;
      },
      dispose() {
        onTick = undefined;
      },
    },
    pass(sec, tickSec = 0.025) {
      const endSec = now + sec;
      while (now + tickSec < endSec) stall(tickSec);
      stall(endSec - now);
    },
    stall,
    isTicking: () => onTick !== undefined,
  };
}
