import { expect, it } from 'vitest';
import { spokenTick } from '../../../../src/ui/parts/pattern/spokenTick.ts';
import { pattern } from '../../../support/patterns.ts';

it('a place is told as it is counted, in the ending apart from the pattern', () => {
  const groove = pattern('4/4', { left: 'R-------', ending: { left: 'R-------' } });
  expect([0, 720, 1920, 1920 + 1680].map((tick) => spokenTick(groove, tick))).toEqual([
    'beat 1',
    '2 and',
    'beat 1 of the ending',
    '4 and of the ending',
  ]);
});

it('a place behind a pattern without ending is its last', () =>
  expect(spokenTick(pattern('4/4', { left: 'R-------' }), 2400)).toBe('4 and'));
