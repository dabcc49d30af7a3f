import type { Seconds } from '../../src/core/time/ticks.ts';
import tapUrl from './outputTapWorklet.mjs?url';

/** What left a context in one block of 128 samples: its highest sample and its sharpest edge. */
export type HeardBlock = { readonly atSec: Seconds; readonly peak: number; readonly edge: number };

const BLOCK_FRAMES = 128;

/**
 * Hears everything that a context's nodes send to its destination from now on. An `edge` is how
 * high a jump from one sample to the next would be that is as sharp.
 */
export async function outputTap(context: AudioContext) {
  await context.audioWorklet.addModule(tapUrl);
  const tap = new AudioWorkletNode(context, 'output-tap', { numberOfOutputs: 1 });
  const heard: HeardBlock[] = [];
  tap.port.addEventListener('message', ({ data }) => {
    const { fromFrame, peaks, edges } = data as {
      fromFrame: number;
      peaks: Float32Array;
      edges: Float32Array;
    };
    peaks.forEach((peak, i) => {
      const atSec = (fromFrame + i * BLOCK_FRAMES) / context.sampleRate;
      heard.push({ atSec, peak, edge: edges[i]! });
    });
  });
  tap.port.start();
  const connect: unknown = Reflect.get(AudioNode.prototype, 'connect');
  const connectAsEver = (from: AudioNode, to: readonly unknown[]): AudioNode =>
    Reflect.apply(connect as () => AudioNode, from, to);
  function connectHeard(this: AudioNode, ...to: unknown[]): AudioNode {
    if (to[0] === context.destination) connectAsEver(this, [tap]);
    return connectAsEver(this, to);
  }
  Reflect.set(AudioNode.prototype, 'connect', connectHeard);
  // A node without a way out is not computed.
  const mute = new GainNode(context, { gain: 0 });
  connectAsEver(tap, [mute]);
  connectAsEver(mute, [context.destination]);
  return {
    heard: (): readonly HeardBlock[] => heard,
    /** The patch of `connect` is taken back. */
    close(): void {
      Reflect.set(AudioNode.prototype, 'connect', connect);
    },
  };
}
