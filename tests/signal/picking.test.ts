import { expect, it } from 'vitest';
import { lowPitches } from '../../src/signal/lowPitches.ts';
import { findPicks } from '../../src/signal/picking.ts';
import { strikesIn } from '../../src/signal/strikeLooks.ts';
import { struckBandFrames } from '../../src/signal/struckBands.ts';
import { pluckedLine, whiteNoise } from '../support/bandSounds.ts';

const picksOf = (samples: Float32Array) =>
  findPicks(strikesIn(struckBandFrames(samples)), lowPitches(samples));

it('finds most strokes of a picked chord, note by note, and few others', () => {
  const keys = [52, 59, 64, 67, 71, 67, 64, 59, 52, 59, 64, 67, 71, 67, 64, 59];
  const found = picksOf(pluckedLine(keys, { stepSec: 0.3, centsHigh: 0 }));
  const right = keys.filter((_, i) => found.some(({ sec }) => Math.abs(sec - i * 0.3) <= 0.05));
  expect(right.length / keys.length).toBeGreaterThanOrEqual(0.8);
  expect(right.length / found.length).toBeGreaterThanOrEqual(0.7);
});

it('finds no picking in silence, in nothing and in noise', () => {
  expect(picksOf(new Float32Array(22050))).toEqual([]);
  expect(picksOf(new Float32Array(0))).toEqual([]);
  expect(picksOf(whiteNoise(6))).toEqual([]);
});
