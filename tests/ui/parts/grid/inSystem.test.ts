import { expect, it } from 'vitest';
import { sameProps } from '../../../../src/ui/kit/sameProps.ts';
import { chosenIn, handsIn, placeIn, tiedInto } from '../../../../src/ui/parts/grid/inSystem.ts';
import { systemsOf } from '../../../../src/ui/parts/grid/systemLayout.ts';
import { pattern, ticksOf } from '../../../support/patterns.ts';

const twoBars = pattern(
  '4/4',
  { left: 'R-------------..R---------------', right: '..............C---....C-........' },
  { bars: 2 },
);

/** Sixteenths on a tablet: one bar a system. */
const [first, second] = systemsOf(twoBars, 800);

it('gives a system the hits that sound in it, one that lasts over the bar line to both', () => {
  expect(ticksOf(handsIn(first!, twoBars).right)).toEqual([1680]);
  expect(ticksOf(handsIn(second!, twoBars).right)).toEqual([1680, 2640]);
  expect(ticksOf(handsIn(first!, twoBars).left)).toEqual([0]);
  expect(ticksOf(handsIn(second!, twoBars).left)).toEqual([1920]);
});

it('has what is chosen, and the place of the cursor, only where they are', () => {
  const hit = twoBars.right[1]!;
  const chosen = { kind: 'hit', hand: 'right', hit, column: 22 } as const;
  const whole = 2 * 1920;
  const shown = (system: typeof first) => chosenIn(system!, chosen, whole);
  expect([first, second].map(shown)).toEqual([undefined, chosen]);
  const place = { row: 'right', column: 15 };
  expect([placeIn(first!, place), placeIn(second!, place)]).toEqual([place, undefined]);
});

it('gives the first system what is tied over the end, and what is chosen where its tie ends', () => {
  const tied = { ...twoBars, right: [{ ...twoBars.right[1]!, at: 3600, length: 480 }] };
  expect(tiedInto(first!, tied, 3840).tiedRight).toEqual(tied.right);
  expect(tiedInto(second!, tied, 3840)).toEqual({ tiedLeft: [], tiedRight: [] });
  expect(tiedInto(first!, twoBars, 3840)).toEqual({ tiedLeft: [], tiedRight: [] });
  const chosen = { kind: 'hit', hand: 'right', hit: tied.right[0]!, column: 30 } as const;
  expect(chosenIn(first!, chosen, 3840)).toBe(chosen);
});

it('leaves a system as it is drawn when a hit of another one changes', () => {
  const later = { ...twoBars, right: [twoBars.right[0]!, { ...twoBars.right[1]!, length: 360 }] };
  const drawn = (of: typeof twoBars, system: typeof first) => ({
    ...handsIn(system!, of),
    bars: 2,
  });
  expect(sameProps(drawn(twoBars, first), drawn(later, first))).toBe(true);
  expect(sameProps(drawn(twoBars, second), drawn(later, second))).toBe(false);
});
