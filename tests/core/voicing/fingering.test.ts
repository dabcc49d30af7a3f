import { expect, it } from 'vitest';
import { suggestedFingering } from '../../../src/core/voicing/fingering.ts';

// common practice
it.each([
  ['C, root position', [60, 64, 67], '135'],
  ['Cm, root position', [60, 63, 67], '135'],
  ['C, first inversion', [64, 67, 72], '125'],
  ['C, second inversion', [67, 72, 76], '135'],
  ['C7, root position', [60, 64, 67, 70], '1235'],
  ['C7, first inversion', [64, 67, 70, 72], '1245'],
  ['C7, second inversion', [67, 70, 72, 76], '1235'],
  ['C7, third inversion', [70, 72, 76, 79], '1235'],
])('%s in the right hand', (_, keys, fingers) =>
  expect(suggestedFingering(keys, 'right')?.join('')).toBe(fingers),
);

// common practice
it('plays octaves and fifths of the left hand with its outer fingers', () => {
  expect(suggestedFingering([36, 48], 'left')).toEqual([5, 1]);
  expect(suggestedFingering([36, 43], 'left')).toEqual([5, 1]);
});

it('says nothing of chords that have no usual fingering', () => {
  expect(suggestedFingering([], 'right')).toBeUndefined();
  expect(suggestedFingering([60], 'right')).toBeUndefined();
  expect(suggestedFingering([60, 67, 76], 'right')).toBeUndefined();
  expect(suggestedFingering([60, 62, 64, 67, 70], 'right')).toBeUndefined();
  expect(suggestedFingering([36], 'left')).toBeUndefined();
  expect(suggestedFingering([36, 52], 'left')).toBeUndefined();
});
