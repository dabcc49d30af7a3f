/** Calls `tick` again and again between `start` and `stop`; late or irregular ticks must be borne. */
export type Timer = {
  start(tick: () => void): void;
  stop(): void;
  /** Ends the timer for good. */
  dispose(): void;
};

/** What a timer's worker is told. */
export type TimerOrder =
  | { readonly kind: 'start'; readonly everyMs: number }
  | { readonly kind: 'stop' };

/** Time between two ticks. */
export const TICK_MS = 25;

/** A timer that ticks every `TICK_MS`, in a worker of its own. */
export function createWorkerTimer(): Timer {
  const worker = new Worker(new URL('./timerWorker.ts', import.meta.url), { type: 'module' });
  const order = (what: TimerOrder) => worker.postMessage(what, {});
  let onTick: (() => void) | undefined;
  worker.addEventListener('message', () => onTick?.());
  return {
    start(tick) {
      onTick = tick;
      order({ kind: 'start', everyMs: TICK_MS });
    },
    stop() {
      onTick = undefined;
      order({ kind: 'stop' });
    },
    dispose() {
      onTick = undefined;
      worker.terminate();
    },
  };
}
