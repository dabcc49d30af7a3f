import { expect, it } from 'vitest';
import {
  handBeside,
  leastHeight,
  rowKey,
  rowLayout,
  rowsOf,
} from '../../../../src/ui/parts/grid/rowLayout.ts';
import { pattern, source } from '../../../support/patterns.ts';

const grid = pattern('4/4', { left: 'R...' });
const sources = ['kick', 'hi-hat', 'bass', 'snare', 'picking'] as const;
const rows = rowsOf(sources.map((part) => source(grid, part, 'x...')));

it('puts the counts between the hands, high sources outside the right, bass and kick outside the left', () => {
  expect(rows.map(rowKey)).toEqual([
    'source hi-hat',
    'source snare',
    'source picking',
    'right',
    'counts',
    'left',
    'source bass',
    'source kick',
  ]);
});

it('says beside which hand a source lies', () => {
  expect([handBeside('kick'), handBeside('snare')]).toEqual(['left', 'right']);
});

it('stacks the rows end to end within the budget', () => {
  const { rows: placed, height } = rowLayout(rows, 380);
  expect(Math.abs(height - 380)).toBeLessThanOrEqual(placed.length);
  for (const [i, { top }] of placed.entries())
    expect(top).toBe(placed.slice(0, i).reduce((sum, row) => sum + row.height, 0));
});

it('never goes below the least height, nor on growing for ever', () => {
  expect(rowLayout(rows, 0).height).toBe(leastHeight(rows));
  expect(rowLayout(rows, 5000).height).toBe(rowLayout(rows, 2000).height);
});

it('leaves a finger at least 44 pixels in the rows that are tapped', () => {
  const tapped = rowLayout(rows, 0).rows.filter(({ row }) => row.kind !== 'source');
  for (const { height } of tapped) expect(height).toBeGreaterThanOrEqual(44);
});
