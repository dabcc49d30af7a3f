import { expect, it } from 'vitest';
import { busyHand, densityClass, feelOf } from '../../../src/core/rhythm/character.ts';
import { pattern } from '../../support/patterns.ts';

it.each([
  ['4/4', 1, 'straight'],
  ['4/4', 2, 'swung'],
  ['12/8', 1, 'in threes'],
  ['2+2+2+2/8', 1, 'straight'],
] as const)('%s with a swing of %s goes %s', (meter, ratio, feel) =>
  expect(feelOf(pattern(meter, { left: 'R...' }, { swing: { level: 'eighth', ratio } }))).toBe(
    feel,
  ),
);

it.each([
  ['R...5...', '..C...C.', 'sparse'],
  ['R...5...', 'C.C.C.C.', 'sparse'],
  ['R..5R...', '..C..C..', 'medium'],
  ['R.......', 'CCCCCCCC', 'medium'],
])('%s under %s is %s', (left, right, density) =>
  expect(densityClass(pattern('4/4', { left, right }))).toBe(density),
);

it('sixteenths are dense', () =>
  expect(densityClass(pattern('2/4', { right: '12341234' }))).toBe('dense'));

it.each([
  ['R.......', 'C.C.....', 'right'],
  ['RRRRR...', 'C.C.C.C.', 'left'],
  ['RRRRRR..', 'CCCCC...', 'both'],
  ['........', '........', 'both'],
])('%s under %s keeps busy: %s', (left, right, hand) =>
  expect(busyHand(pattern('4/4', { left, right }))).toBe(hand),
);
