import { expect, it } from 'vitest';
import { withOtherId } from '../../../src/core/practice/takeRecord.ts';
import { takeRecord } from '../../support/takeRecords.ts';
import { expectedHit, scoreOf } from '../../support/takes.ts';

it('gives a take another id wherever one is named, and nowhere else', () => {
  const score = scoreOf([
    [expectedHit(0, 'left', { patternId: 'p', patternTick: 0 }), 0],
    [expectedHit(1, 'left', { patternId: 'q', patternTick: 0 }), 0],
  ]);
  const ofPattern = withOtherId(takeRecord({ score }), 'p', 'gone');
  expect(ofPattern.target).toEqual({ kind: 'pattern', patternId: 'gone' });
  expect(ofPattern.score.steps.map(({ patternId }) => patternId)).toEqual(['gone', 'q']);
  const join = takeRecord({ target: { kind: 'join', from: 'join', to: 'verse' } });
  expect(withOtherId(join, 'join', 'gone').target).toEqual({
    kind: 'join',
    from: 'gone',
    to: 'verse',
  });
  expect(withOtherId(join, 'x', 'gone')).toBe(join);
});
