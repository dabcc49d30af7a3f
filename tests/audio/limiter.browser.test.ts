import { expect, it } from 'vitest';
import { createLimiter, LIMITER_KNEE, limited } from '../../src/audio/limiter.ts';

const RATE = 48000;

/** What the limiter makes of samples, at the same places. */
async function through(samples: Float32Array<ArrayBuffer>): Promise<Float32Array> {
  const context = new OfflineAudioContext(1, samples.length, RATE);
  const buffer = new AudioBuffer({ length: samples.length, sampleRate: RATE });
  buffer.copyToChannel(samples, 0);
  const limiter = createLimiter(context);
  const source = new AudioBufferSourceNode(context, { buffer });
  source.connect(limiter.input);
  limiter.output.connect(context.destination);
  source.start(0);
  return (await context.startRendering()).getChannelData(0);
}

function largestError(out: Float32Array, expected: (i: number) => number): number {
  return out.reduce((worst, x, i) => Math.max(worst, Math.abs(x - expected(i))), 0);
}

it('has no delay and no error below the knee', async () => {
  const quiet = Float32Array.from({ length: 4800 }, (_, i) => LIMITER_KNEE * Math.sin(i * i));
  expect(largestError(await through(quiet), (i) => quiet[i]!)).toBeLessThan(1e-6);
});

it('follows its curve above the knee, without overshoot at a sudden onset', async () => {
  const loud = Float32Array.from({ length: 4800 }, (_, i) => (i < 100 ? 0 : 6 * Math.cos(i / 7)));
  const out = await through(loud);
  expect(largestError(out, (i) => limited(loud[i]!))).toBeLessThan(1e-5);
  expect(out.findIndex((x) => x !== 0)).toBe(100);
});

it('stays at its ceiling for input far beyond its range', async () => {
  const huge = Float32Array.from({ length: 480 }, (_, i) => (i % 2 === 0 ? 1000 : -1000));
  const out = await through(huge);
  expect(largestError(out, (i) => limited(huge[i]!))).toBeLessThan(1e-6);
});
