import { expect, it } from 'vitest';
import { foldStrokes } from '../../../src/core/rhythm/fold.ts';
import {
  fMeasure,
  foundSteps,
  grooveOfPattern,
  playGroove,
  trueDivisions,
  truePeriod,
  trueSteps,
  UNEVEN,
} from '../../support/grooves.ts';
import { seededRandom } from '../../support/random.ts';
import { shelf } from '../../support/shelf.ts';

/** Chosen once, before looking at the results. */
const SEEDS = [1, 2, 3];

function longShare(ratio: number): number {
  return ratio / (1 + ratio);
}

// Played over 16 bars with 15 ms of jitter, a tenth of the strokes missing and a tenth added.
it.each(shelf().map(({ pattern }) => [pattern.name, pattern] as const))(
  'recovers the hands of %s from an uneven playing',
  (_, pattern) => {
    const played = grooveOfPattern(pattern);
    for (const seed of SEEDS) {
      const { strokes, beats } = playGroove(played, UNEVEN, seededRandom(seed));
      const fold = foldStrokes(strokes, beats, played.meter);
      expect(fMeasure(foundSteps(fold), trueSteps(played))).toBeGreaterThanOrEqual(0.98);
      expect(fold.bars).toBe(truePeriod(played));
      expect(fold.divisions).toEqual(trueDivisions(played));
      const offShare = longShare(fold.swing.ratio) - longShare(played.swing.ratio);
      expect(Math.abs(offShare)).toBeLessThanOrEqual(0.03);
    }
  },
);
