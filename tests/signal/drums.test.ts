import { describe, expect, it } from 'vitest';
import { findDrumHits } from '../../src/signal/drums.ts';
import { strikesIn } from '../../src/signal/strikeLooks.ts';
import { struckBandFrames } from '../../src/signal/struckBands.ts';
import { playedDrums, steadyTone, whiteNoise } from '../support/bandSounds.ts';

const hitsOf = (samples: Float32Array) => findDrumHits(strikesIn(struckBandFrames(samples)));

describe('drum hits', () => {
  // Eight bars of a back-beat at 100 bpm: x = struck; a step is an eighth.
  const groove = { kick: 'x--x--x-', snare: '--x---x-', hat: 'xxxxxxxx' };
  const stepSec = 0.3;
  const samples = playedDrums(groove, { stepSec, times: 8 });

  it.each(['kick', 'snare', 'hat'] as const)(
    'finds most of the %ss and few that are not there',
    (piece) => {
      const found = hitsOf(samples).filter((hit) => hit.piece === piece);
      const played = Array.from(groove[piece].repeat(8)).flatMap((c, i) =>
        c === 'x' ? [i * stepSec] : [],
      );
      const near = played.filter((sec) => found.some((hit) => Math.abs(hit.sec - sec) <= 0.05));
      expect(near.length / played.length).toBeGreaterThan(0.8);
      expect(near.length / found.length).toBeGreaterThan(0.7);
    },
  );

  it('gives times that ascend, and strengths and probabilities from 0 to 1', () => {
    const hits = hitsOf(samples);
    expect(hits.map((hit) => hit.sec)).toEqual(
      hits.map((hit) => hit.sec).toSorted((a, b) => a - b),
    );
    for (const { strength, probability } of hits) {
      expect(strength).toBeGreaterThanOrEqual(0);
      expect(strength).toBeLessThanOrEqual(1);
      expect(probability).toBeGreaterThan(0);
      expect(probability).toBeLessThanOrEqual(1);
    }
  });

  it('is not changed by how loud the recording is', () => {
    const quiet = samples.map((s) => s / 20);
    const places = (hits: ReturnType<typeof hitsOf>) =>
      hits.map(({ sec, piece }) => `${piece} ${sec.toFixed(2)}`);
    expect(places(hitsOf(quiet))).toEqual(places(hitsOf(samples)));
  });

  it('hears nothing in silence and in a recording without samples', () => {
    expect(hitsOf(new Float32Array(22050))).toEqual([]);
    expect(hitsOf(new Float32Array(0))).toEqual([]);
  });

  it('hears no drums in a tone that is held', () => {
    expect(hitsOf(steadyTone(220, 4))).toEqual([]);
  });

  it('hears no drums in steady noise', () => {
    expect(hitsOf(whiteNoise(6))).toEqual([]);
  });
});
