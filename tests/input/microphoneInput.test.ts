import { expect, it } from 'vitest';
import type { PlayedNote } from '../../src/core/practice/playedHits.ts';
import { microphoneOnsets, type SoundSource } from '../../src/input/microphoneInput.ts';
import { valueOf } from '../support/music.ts';
import { struckTones } from '../support/tones.ts';

it('tells the onsets of what comes in, less the latency, until it is stopped', async () => {
  const listeners = new Set<Parameters<SoundSource['listen']>[0]>();
  const source: SoundSource = {
    sampleRate: 44100,
    listen: (onPiece) => {
      listeners.add(onPiece);
      return () => listeners.delete(onPiece);
    },
  };
  const hits: PlayedNote[] = [];
  const stop = valueOf(
    await microphoneOnsets(source)({
      outputTimestamp: () => ({ contextTime: 0, performanceTime: 0 }),
      latencySec: 0.04,
      onHit: (note) => hits.push(note),
    }),
  );
  const tones = [1, 1.5, 2].map((atSec, i) => ({
    atSec,
    freqHz: [220, 277, 330][i]!,
    amplitude: 0.2,
  }));
  const sound = struckTones(tones, 3, 44100);
  for (let from = 0; from < sound.length; from += 512)
    for (const onPiece of listeners) onPiece(sound.slice(from, from + 512), 20 + from / 44100);
  stop();
  expect(listeners.size).toBe(0);
  expect(hits.map((hit) => Object.keys(hit))).toEqual([['atSec'], ['atSec'], ['atSec']]);
  // A sudden tone out of silence is found up to 20 ms early, but always alike.
  const earlySec = hits.map((hit, i) => 20.96 + 0.5 * i - hit.atSec);
  expect(Math.max(...earlySec.map(Math.abs))).toBeLessThan(0.02);
  expect(Math.max(...earlySec) - Math.min(...earlySec)).toBeLessThan(0.01);
});
