import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { swungTick, takesSwing } from '../../../src/core/rhythm/swing.ts';
import { meter } from '../../support/music.ts';

const eighths = (ratio: number) => ({ level: 'eighth', ratio }) as const;
const sixteenths = (ratio: number) => ({ level: 'sixteenth', ratio }) as const;

describe('swing', () => {
  // docs/sources.md#swing, ratio to share of the beat (computed): .5, .6, .6667, .75, .7778
  it.each([
    [1, 240],
    [1.5, 288],
    [2, 320],
    [3, 360],
    [3.5, 373],
  ])('puts the off-beat eighth of %s:1 at tick %i of the beat', (ratio, tick) =>
    expect(swungTick(240, meter('4/4'), eighths(ratio))).toBe(tick),
  );

  it('keeps every beat and bar line', () =>
    expect(
      [0, 480, 960, 1440, 1920, -480].map((t) => swungTick(t, meter('4/4'), eighths(2))),
    ).toEqual([0, 480, 960, 1440, 1920, -480]));

  it('spreads sixteenths evenly over each half of a swung pair of eighths', () =>
    expect([0, 120, 240, 360].map((t) => swungTick(t, meter('4/4'), eighths(2)))).toEqual([
      0, 160, 320, 400,
    ]));

  it('swings sixteenths inside each eighth', () =>
    expect([0, 120, 240, 360, 480].map((t) => swungTick(t, meter('4/4'), sixteenths(2)))).toEqual([
      0, 160, 240, 400, 480,
    ]));

  it('leaves the eighths of 6/8 even but swings its sixteenths', () => {
    expect([240, 480].map((t) => swungTick(t, meter('6/8'), eighths(2)))).toEqual([240, 480]);
    expect([120, 240, 600].map((t) => swungTick(t, meter('6/8'), sixteenths(2)))).toEqual([
      160, 240, 640,
    ]);
  });

  it('counts pairs from each felt beat and leaves a lone sixteenth alone', () =>
    expect([120, 240, 300, 480].map((t) => swungTick(t, meter('3+2/16'), sixteenths(3)))).toEqual([
      180, 240, 300, 540,
    ]));

  it('swings before the first bar line as after it', () =>
    expect(swungTick(-240, meter('3/4'), eighths(2))).toBe(-160));

  it('never changes the order of two positions', () =>
    fc.assert(
      fc.property(
        fc.constantFrom('2/4', '3/4', '4/4', '5/4', '2/2', '6/8', '7/8', '5/16'),
        fc.constantFrom('eighth' as const, 'sixteenth' as const),
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.integer({ min: -4000, max: 4000 }),
        fc.integer({ min: 0, max: 500 }),
        (text, level, ratio, tick, later) =>
          swungTick(tick, meter(text), { level, ratio }) <=
          swungTick(tick + later, meter(text), { level, ratio }),
      ),
    ));

  it.each([
    [480, [1, 2, 4, 8], [3, 6]],
    [720, [1, 3, 6], [2, 4, 8]],
    [960, [1, 2, 4, 8], [3, 6]],
  ])('takes in a beat of %i ticks plain divisions, not tuplets', (beat, plain, tuplets) => {
    expect(plain.map((d) => takesSwing(beat, d))).toEqual(plain.map(() => true));
    expect(tuplets.map((d) => takesSwing(beat, d))).toEqual(tuplets.map(() => false));
  });
});
