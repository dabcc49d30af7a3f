import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { foldStrokes } from '../../../src/core/rhythm/fold.ts';
import {
  foundSteps,
  type Groove,
  groove,
  type Playing,
  playGroove,
  trueSteps,
} from '../../support/grooves.ts';
import { seededRandom } from '../../support/random.ts';

/** Grooves with the fastest tempo at which their shortest steps still last 110 ms, so that 60 ms late is no step early. */
const GROOVES: readonly { readonly played: Groove; readonly fastestBpm: number }[] = [
  {
    played: groove('4/4', {
      kick: 'x. .. x. ..',
      snare: '.. x. .. x.',
      'hi-hat': 'xx xx xx xx',
    }),
    fastestBpm: 260,
  },
  {
    played: groove('4/4', { kick: 'x. .x x. .x', snare: '.. x. .. x.', ride: 'x. xx x. xx' }),
    fastestBpm: 260,
  },
  {
    played: groove('4/4', {
      kick: 'X..x ..x. .x.. ....',
      snare: '.... X..o .o.. X...',
      'hi-hat': 'x.x. x.x. x.x. x.x.',
    }),
    fastestBpm: 136,
  },
  { played: groove('3/4', { bass: 'x. .. ..', right: '.. xx x.' }), fastestBpm: 260 },
  {
    played: groove('6/8', { kick: 'x.. ..x', snare: '... x..', 'hi-hat': 'xxx xxx' }),
    fastestBpm: 180,
  },
];

const UNEVENLY = { bars: 16, jitterSec: 0.012, missing: 0, added: 0 };

function steps(played: Groove, playing: Playing, seed: number, unit: 'seconds' | 'ticks') {
  const { strokes, beats } = playGroove(played, playing, seededRandom(seed));
  const beatSec = beats[1]! - beats[0]!;
  const ticks = (sec: number) => (480 * sec) / beatSec;
  const fold =
    unit === 'seconds'
      ? foldStrokes(strokes, beats, played.meter)
      : foldStrokes(
          strokes.map((stroke) => ({ ...stroke, at: ticks(stroke.at) })),
          beats.map(ticks),
          played.meter,
          { beatSec },
        );
  return foundSteps(fold).toSorted();
}

it('moves no step for players or devices that are up to 60 ms early or late, at any tempo', {
  timeout: 60_000,
}, () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...GROOVES),
      fc.integer({ min: 60, max: 260 }),
      fc.integer({ min: -60, max: 60 }),
      fc.constantFrom('seconds', 'ticks'),
      fc.nat({ max: 1000 }),
      ({ played, fastestBpm }, bpm, latencyMs, unit, seed) => {
        const playing = {
          ...UNEVENLY,
          bpm: Math.min(bpm, fastestBpm),
          latencySec: latencyMs / 1000,
        };
        expect(steps(played, playing, seed, unit)).toEqual(trueSteps(played).toSorted());
      },
    ),
    { numRuns: 40 },
  );
});

it.each([-37, 37])('hears off-beats that all come %i ms off as off-beats, straight', (ms) => {
  const played = groove('4/4', { taps: '.x .x .x .x' });
  const { strokes, beats } = playGroove(
    played,
    { ...UNEVENLY, bpm: 100, latencySec: ms / 1000 },
    seededRandom(1),
  );
  const fold = foldStrokes(strokes, beats, played.meter);
  expect(fold.swing.ratio).toBe(1);
  expect(foundSteps(fold)).toEqual(trueSteps(played));
});
