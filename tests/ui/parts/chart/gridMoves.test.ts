import { expect, it } from 'vitest';
import { chartBars } from '../../../../src/ui/parts/chart/chartLayout.ts';
import { cellForChange } from '../../../../src/ui/parts/chart/gridMoves.ts';
import { section, slots } from '../../../support/music.ts';

const BARS = chartBars(section('verse', { slots: slots('| C / / / | F / G / | Am / / / |') }));
const CELLS = BARS.flatMap(({ cells }) => cells);

/** Where the change on a beat of the chart (0-based) ends up that is pulled to another beat. */
function placeOf(from: number, pulledTo: number): number {
  return CELLS.indexOf(cellForChange(BARS, CELLS[from]!, CELLS[pulledTo]!.startTick));
}

it.each([
  ['a beat later', 6, 7, 7],
  ['a beat earlier', 6, 5, 5],
  ['over a bar line', 4, 2, 2],
  ['no further than behind the change before', 6, 1, 5],
  ['no further than ahead of the change after', 4, 11, 5],
  ['to the last beat', 8, 11, 11],
  ['nowhere from where it is held', 6, 6, 6],
])('a change is pulled %s', (_, from, pulledTo, place) =>
  expect(placeOf(from, pulledTo)).toBe(place),
);

it('a change is pulled on in a chart that was laid out anew meanwhile', () =>
  expect(CELLS.indexOf(cellForChange(BARS, { ...CELLS[6]! }, CELLS[7]!.startTick))).toBe(7));

it('a change that is pulled off the chart goes back', () =>
  expect(cellForChange(BARS, CELLS[6]!, undefined)).toBe(CELLS[6]));
