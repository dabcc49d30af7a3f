import { expect, it, vi } from 'vitest';
import { startAudio } from '../../src/audio/context.ts';
import { createWorkerTimer } from '../../src/audio/workerTimer.ts';
import { valueOf } from '../support/music.ts';

function waitFor(milliseconds: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
}

it('opens a running room whose clock is the context’s and whose latency is known', async () => {
  const room = valueOf(await startAudio());
  const before = room.clock();
  await waitFor(200);
  expect(room.context.state).toBe('running');
  expect(room.clock()).toBeGreaterThan(before);
  expect(room.outputLatencySec()).toBeGreaterThanOrEqual(0);
  expect(room.outputLatencySec()).toBeLessThan(1);
  await room.context.close();
});

it('ticks from a worker between start and stop', async () => {
  const timer = createWorkerTimer();
  let ticks = 0;
  await new Promise<void>((resolve) => {
    timer.start(() => {
      ticks++;
      if (ticks === 5) resolve();
    });
  });
  timer.stop();
  await waitFor(200);
  expect(ticks).toBe(5);
  timer.dispose();
});

it('tells when the system takes the sound away, and no more once nobody asks', async () => {
  const room = valueOf(await startAudio());
  const told = vi.fn();
  const stop = room.onInterrupted(told);
  await room.context.suspend();
  await vi.waitFor(() => expect(told).toHaveBeenCalledOnce());
  await room.resume();
  stop();
  await room.context.suspend();
  expect(told).toHaveBeenCalledOnce();
  await room.context.close();
});
