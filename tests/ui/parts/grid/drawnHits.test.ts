import { expect, it } from 'vitest';
import type { Project } from '../../../../src/core/project.ts';
import { hitRepeated, hitsDrawn, hitsRubbedOut } from '../../../../src/ui/parts/grid/drawnHits.ts';
import { pattern, ticksOf } from '../../../support/patterns.ts';

const before = pattern('4/4', { left: 'R-..5...', right: '..C-..T.' });

function placeAt(hand: 'left' | 'right', column: number) {
  return { patternId: before.id, scope: 'main' as const, shown: before, hand, column };
}

function after(edit: ((project: Project) => Project) | undefined) {
  return edit?.({ patterns: [before] } as unknown as Project).patterns[0];
}

it('draws on every step that rests, forwards and backwards, and lets what sounds be', () => {
  const forwards = after(hitsDrawn(placeAt('right', 1), 5));
  expect(ticksOf(forwards!.right)).toEqual([240, 480, 960, 1200, 1440]);
  expect(forwards!.right[1]).toEqual(before.right[0]);
  expect(after(hitsDrawn(placeAt('right', 5), 1))).toEqual(forwards);
});

it('rubs out what sounds on the steps passed, also what began before them', () => {
  expect(ticksOf(after(hitsRubbedOut(placeAt('left', 1), 3))!.left)).toEqual([960]);
  expect(after(hitsRubbedOut(placeAt('left', 3), 2))).toEqual(before);
});

it('repeats a hit behind its end, with all that it is', () => {
  const change = hitRepeated(placeAt('left', 0));
  expect(change?.column).toBe(2);
  expect(after(change?.edit)?.left[1]).toEqual({ ...before.left[0], at: 480 });
});

it('repeats the last hit before an empty place, and only goes to a hit that is there already', () => {
  expect(after(hitRepeated(placeAt('right', 4))?.edit)?.right[1]).toMatchObject({
    at: 960,
    play: ['all'],
  });
  const full = { ...before, left: pattern('4/4', { left: 'R-5-....' }).left };
  const onward = hitRepeated({ ...placeAt('left', 0), shown: full });
  expect(onward?.column).toBe(2);
  expect(after(onward?.edit)).toBe(before);
});

it('has nothing to repeat before the first hit, and no room behind the last step', () => {
  expect(hitRepeated(placeAt('right', 0))).toBeUndefined();
  const last = { ...before, right: pattern('4/4', { right: '.......C' }).right };
  expect(hitRepeated({ ...placeAt('right', 7), shown: last })).toBeUndefined();
});
