import { expect, it } from 'vitest';
import { patternSteps } from '../../../../src/core/rhythm/pattern.ts';
import {
  beatIndexOf,
  chosenAt,
  placeAfter,
  placeWithin,
  shownPattern,
  strokesOnStep,
} from '../../../../src/ui/parts/grid/gridPlace.ts';
import { pattern, source } from '../../../support/patterns.ts';

const plain = pattern('4/4', { left: 'R---5---', right: '--C---C-' });
const withBand = { ...plain, sources: [source(plain, 'snare', '..x...x.')] };

const go = (columns: number, rows: number) => ({ kind: 'go' as const, columns, rows });

it('goes by arrows from place to place and stops at the edges', () => {
  const from = { row: 'right', column: 7 };
  expect(placeAfter(plain, from, go(1, 0))).toEqual(from);
  expect(placeAfter(plain, from, go(-1, 0))).toEqual({ row: 'right', column: 6 });
  expect(placeAfter(plain, from, go(0, 1))).toEqual({ row: 'counts', column: 7 });
  expect(placeAfter(plain, from, go(0, -1))).toEqual(from);
  expect(placeAfter(withBand, from, go(0, -1))).toEqual({ row: 'source snare', column: 7 });
});

it('goes from beat to beat along the counts', () => {
  expect(placeAfter(plain, { row: 'counts', column: 3 }, go(1, 0))).toEqual({
    row: 'counts',
    column: 4,
  });
});

it('goes to the ends of a row and of the grid', () => {
  const from = { row: 'left', column: 3 };
  const to = (place: 'row start' | 'row end' | 'grid start' | 'grid end') =>
    placeAfter(withBand, from, { kind: 'go-to', place });
  expect([to('row start'), to('row end'), to('grid start'), to('grid end')]).toEqual([
    { row: 'left', column: 0 },
    { row: 'left', column: 7 },
    { row: 'source snare', column: 0 },
    { row: 'left', column: 7 },
  ]);
});

it('keeps the cursor in the grid when steps or sources are gone', () => {
  expect(placeWithin(plain, { row: 'source snare', column: 12 })).toEqual({
    row: 'right',
    column: 7,
  });
});

it('chooses the hit that begins on a step, or else the one that lasts over it', () => {
  const at = (column: number) => chosenAt(plain, { row: 'left', column });
  expect(at(0)).toMatchObject({ kind: 'hit', hit: { at: 0 }, column: 0 });
  expect(at(3)).toMatchObject({ kind: 'hit', hit: { at: 0 }, column: 0 });
  expect(at(4)).toMatchObject({ kind: 'hit', hit: { at: 960 }, column: 4 });
  expect(chosenAt(plain, { row: 'right', column: 0 })).toBeUndefined();
});

it('chooses a stroke of the band by its nearest step', () => {
  expect(chosenAt(withBand, { row: 'source snare', column: 2 })).toMatchObject({
    kind: 'stroke',
    stroke: { at: 480 },
  });
  const steps = patternSteps(plain);
  const late = { at: 330, length: 10, strength: 1, presence: 1, what: [] };
  expect(steps.map((step) => strokesOnStep([late], step, steps).length)).toEqual([
    0, 1, 0, 0, 0, 0, 0, 0,
  ]);
});

it('shows the ending as one bar without the band, divided as the last bar', () => {
  const two = pattern(
    '2/4',
    { left: 'R---', ending: { left: '5-' } },
    { bars: 2, divisions: [1, 1, 1, 1] },
  );
  const divided = { ...two, divisions: [2, 2, 1, 1] as const, sources: withBand.sources };
  const ending = shownPattern(divided, 'ending');
  expect(ending).toMatchObject({ bars: 1, divisions: [1, 1], sources: [] });
  expect(ending.left.map(({ play }) => play)).toEqual([['fifth']]);
  expect(beatIndexOf(ending, patternSteps(ending)[1]!.beat)).toBe(1);
});
