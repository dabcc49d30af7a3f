import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { swungTick } from '../../../../src/core/rhythm/swing.ts';
import { straightTick } from '../../../../src/ui/parts/grid/straightTick.ts';
import { swingLevels, swingWords } from '../../../../src/ui/parts/pattern/swingWords.ts';
import { meter } from '../../../support/music.ts';

it('takes a swung position back to the straight grid, within a tick of the count', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 1919 }),
      fc.double({ min: 1, max: 3, noNaN: true }),
      fc.constantFrom('eighth' as const, 'sixteenth' as const),
      (tick, ratio, level) => {
        const swing = { level, ratio };
        const back = straightTick(swungTick(tick, meter('4/4'), swing), meter('4/4'), swing);
        expect(Math.abs(back - tick)).toBeLessThan(2.5);
      },
    ),
  );
});

it.each([
  [1, 'straight'],
  [1.3, 'a little 1.3 : 1'],
  [2, 'triplet feel 2 : 1'],
  [3, 'dotted 3 : 1'],
])('says a ratio of %s as %s', (ratio, words) => {
  expect(swingWords(ratio)).toBe(words);
});

it('offers no swung eighths where the beat is a group of eighths', () => {
  expect(swingLevels(meter('6/8'))).toEqual(['sixteenth']);
  expect(swingLevels(meter('3/4'))).toEqual(['eighth', 'sixteenth']);
});
