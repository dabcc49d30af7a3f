import { expect, it } from 'vitest';
import { foldStrokes } from '../../../src/core/rhythm/fold.ts';
import {
  fMeasure,
  foundSteps,
  groove,
  playGroove,
  trueDivisions,
  truePeriod,
  trueSteps,
  UNEVEN,
} from '../../support/grooves.ts';
import { seededRandom } from '../../support/random.ts';

/** Puts the steps of a timeline into beats of so many steps. */
function inBeats(steps: string, beats: readonly number[]): string {
  let at = 0;
  return beats.map((length) => steps.slice(at, (at += length))).join(' ');
}

function recovery(meterText: string, line: string, seed: number) {
  const played = groove(meterText, { bell: line });
  const { strokes, beats } = playGroove(played, UNEVEN, seededRandom(seed));
  const fold = foldStrokes(strokes, beats, played.meter);
  return { played, fold, f: fMeasure(foundSteps(fold), trueSteps(played)) };
}

/** The meters that hold so many eighths (or sixteenths in 2/4 and 4/4), and the steps of their beats. */
const METERS: Readonly<Record<number, readonly [string, readonly number[]]>> = {
  3: ['3/8', [3]],
  4: ['2/4', [2, 2]],
  5: ['5/8', [3, 2]],
  6: ['6/8', [3, 3]],
  7: ['7/8', [2, 2, 3]],
  8: ['4/4', [2, 2, 2, 2]],
  9: ['9/8', [3, 3, 3]],
  11: ['11/8', [3, 3, 3, 2]],
  12: ['12/8', [3, 3, 3, 3]],
  16: ['4/4', [4, 4, 4, 4]],
};

// Euclidean rhythms as the paper rotates them [ER], reference 3.3.
it.each([
  'x.x',
  'x.xx',
  'x.x..',
  'x.x.x',
  'x.xxxx',
  'x.x.x..',
  'x.x.x.x',
  'x.xx.xx',
  'x..x..x.',
  'x.xx.xx.',
  'x.xxxxxx',
  'x.x.x.x..',
  'x.x.x.x.x',
  'x..x..x..x.',
  'x.x.x.x.x..',
  'x..x.x..x.x.',
  'x.xx.x.xx.x.',
  'x..x..x..x..x...',
  'x..x.x.x..x.x.x.',
  'x.xx.x.x.xx.x.x.',
])('recovers the Euclidean rhythm %s', (steps) => {
  const [meterText, beats] = METERS[steps.length]!;
  const { played, fold, f } = recovery(meterText, inBeats(steps, beats), steps.length);
  expect(f).toBeGreaterThanOrEqual(0.98);
  expect(fold.bars).toBe(1);
  expect(fold.divisions).toEqual(trueDivisions(played));
});

// 24 steps are two bars of 12/8 [ER].
it.each(['x..x.x.x.x.x..x.x.x.x.x.', 'x.xx.x.x.x.x.xx.x.x.x.x.'])(
  'recovers the Euclidean rhythm %s over two bars',
  (steps) => {
    const { fold, f } = recovery('12/8', inBeats(steps, [3, 3, 3, 3, 3, 3, 3, 3]), 24);
    expect(f).toBeGreaterThanOrEqual(0.98);
    expect(fold.bars).toBe(2);
  },
);

// Timelines of 16 steps [GT], reference 3.2, as one bar of sixteenths and as two bars of eighths.
it.each([
  ['shiko', [0, 4, 6, 10, 12]],
  ['son', [0, 3, 6, 10, 12]],
  ['rumba', [0, 3, 7, 10, 12]],
  ['soukous', [0, 3, 6, 10, 11]],
  ['gahu', [0, 3, 6, 10, 14]],
  ['bossa nova', [0, 3, 6, 10, 13]],
])('recovers the timeline %s', (_, onsets) => {
  const steps = Array.from({ length: 16 }, (__, i) => (onsets.includes(i) ? 'x' : '.')).join('');
  for (const beat of [4, 2]) {
    const line = inBeats(
      steps,
      Array.from({ length: 16 / beat }, () => beat),
    );
    const { played, fold, f } = recovery('4/4', line, 16 + beat);
    expect(f).toBeGreaterThanOrEqual(0.98);
    expect(fold.bars).toBe(truePeriod(played));
    expect(fold.divisions).toEqual(trueDivisions(played));
  }
});

// Timelines of 12 steps with seven onsets [GT].
it.each([
  ['bembe', '101011010101'],
  ['yoruba', '101011010110'],
  ['soli', '101010101101'],
  ['tambu', '101010110101'],
  ['tonada', '101101101010'],
  ['asaadua', '101010110110'],
  ['sorsonet', '111010101010'],
  ['bemba', '101101010110'],
  ['ashanti', '101101011010'],
])('recovers the timeline %s in 12/8', (_, digits) => {
  const steps = digits.replaceAll('1', 'x').replaceAll('0', '.');
  const { played, fold, f } = recovery('12/8', inBeats(steps, [3, 3, 3, 3]), 12);
  expect(f).toBeGreaterThanOrEqual(0.98);
  expect(fold.bars).toBe(1);
  expect(fold.divisions).toEqual(trueDivisions(played));
});
