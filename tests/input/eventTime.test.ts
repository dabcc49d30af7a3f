import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { audioTimeOf } from '../../src/input/eventTime.ts';

it.each([
  // At 5000 ms of the page second 2 of the context was heard.
  [5000, 2],
  [5250, 2.25],
  [4990, 1.99],
])('what happened at %d ms of the page was at %d s of what was heard', (timeStampMs, sec) =>
  expect(audioTimeOf(timeStampMs, { contextTime: 2, performanceTime: 5000 })).toBeCloseTo(sec, 12),
);

it('does not depend on when the two clocks were compared', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1e6, noNaN: true }),
      fc.double({ min: -50, max: 50, noNaN: true }),
      (timeStampMs, laterMs) => {
        const then = { contextTime: 3, performanceTime: 4000 };
        const later = { contextTime: 3 + laterMs / 1000, performanceTime: 4000 + laterMs };
        expect(audioTimeOf(timeStampMs, later)).toBeCloseTo(audioTimeOf(timeStampMs, then), 6);
      },
    ),
  ));
