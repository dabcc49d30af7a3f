import { expect, it } from 'vitest';
import { drawnRungs } from '../../../src/ui/drill/ladderLayout.ts';

const tempos = (rungs: readonly { bpm: number }[]) => rungs.map((rung) => rung.bpm);

const rungsAt = (bpms: readonly number[]) => bpms.map((bpm) => ({ bpm }));

it('draws every rung where they fit', () => {
  const drawn = drawnRungs(rungsAt([60, 66, 72]), 1, 5);
  expect(drawn.map((rung) => rung.standing)).toEqual(['climbed', 'here', 'ahead']);
});

it('keeps the first, the last and those around the rung in use where they do not', () => {
  const rungs = rungsAt(Array.from({ length: 30 }, (_, i) => 60 + 2 * i));
  expect(tempos(drawnRungs(rungs, 10, 7))).toEqual([60, 76, 78, 80, 82, 84, 118]);
  expect(tempos(drawnRungs(rungs, 0, 7))).toEqual([60, 62, 64, 66, 68, 70, 118]);
  expect(tempos(drawnRungs(rungs, 29, 7))).toEqual([60, 108, 110, 112, 114, 116, 118]);
});

it('always draws the rung in use', () => {
  const rungs = rungsAt(Array.from({ length: 23 }, (_, i) => 50 + i));
  for (let here = 0; here < rungs.length; here++)
    expect(drawnRungs(rungs, here, 9).filter((rung) => rung.standing === 'here')).toMatchObject([
      rungs[here],
    ]);
});
