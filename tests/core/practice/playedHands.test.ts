import { expect, it } from 'vitest';
import { withHands } from '../../../src/core/practice/playedHands.ts';
import { expectedHit } from '../../support/takes.ts';

/** Left C2 with a chord above, then the left up at C4 under a chord an octave higher, then the left alone. */
const EXPECTED = [
  expectedHit(0, 'left', { keys: [36] }),
  expectedHit(0, 'right', { keys: [60, 64, 67] }),
  expectedHit(1, 'left', { keys: [60] }),
  expectedHit(1, 'right', { keys: [72, 76] }),
  expectedHit(2, 'left', { keys: [36] }),
];

it.each([
  [0, 36, 'left'],
  [0.05, 64, 'right'],
  // Wrong keys go to the hand that is nearer.
  [0, 40, 'left'],
  [0, 58, 'right'],
  // The same key is the right hand's at first and the left hand's later.
  [0, 60, 'right'],
  [1, 60, 'left'],
  // Just between 60 and 72: the hand that plays lower.
  [1, 66, 'left'],
  // The right hand has nothing near 2 s; its hit at 1 s is what it could mean.
  [2, 72, 'right'],
  [2, 37, 'left'],
  // Long after all.
  [9, 75, 'right'],
] as const)('at %d s key %d is the %s hand’s', (atSec, keyNumber, hand) =>
  expect(withHands([{ atSec, keyNumber }], EXPECTED)).toEqual([{ atSec, keyNumber, hand }]),
);

it('with one hand expected all is that hand’s', () =>
  expect(
    withHands([{ atSec: 0, keyNumber: 90 }], [expectedHit(0, 'left', { keys: [36] })]),
  ).toMatchObject([{ hand: 'left' }]));

it('what tells its hand or no key stays as it is, and so does all where nothing is expected', () => {
  const notes = [{ atSec: 0, keyNumber: 36, hand: 'right' } as const, { atSec: 0 }];
  expect(withHands(notes, EXPECTED)).toEqual(notes);
  expect(withHands([{ atSec: 0, keyNumber: 36 }], [])).toEqual([{ atSec: 0, keyNumber: 36 }]);
});
