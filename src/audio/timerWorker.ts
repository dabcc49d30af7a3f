import type { TimerOrder } from './workerTimer.ts';

/** Ticks as ordered: a worker's timer keeps its pace where a page in the background is slowed down. */
function obeyOrders(): void {
  let ticking: ReturnType<typeof setInterval> | undefined;
  globalThis.addEventListener('message', ({ data }: MessageEvent<TimerOrder>) => {
    clearInterval(ticking);
    if (data.kind === 'start')
      ticking = setInterval(() => globalThis.postMessage('tick', {}), data.everyMs);
  });
}

obeyOrders();
