import { expect, it } from 'vitest';
import { scrolledBy } from '../../../../src/ui/parts/grid/inSight.ts';

const room = { top: 50, bottom: 450 };

it('leaves what is in sight where it is', () => {
  expect(scrolledBy({ top: 100, bottom: 400 }, room)).toBe(0);
});

it('scrolls up or down no further than to the nearest edge, with a little white', () => {
  expect(scrolledBy({ top: 30, bottom: 200 }, room)).toBe(-32);
  expect(scrolledBy({ top: 300, bottom: 470 }, room)).toBe(32);
});

it('shows the upper part of what is higher than the room', () => {
  expect(scrolledBy({ top: 200, bottom: 700 }, room)).toBe(138);
});
