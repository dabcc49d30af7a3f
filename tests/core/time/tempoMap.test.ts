import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barTicks, tempoBeatTicks } from '../../../src/core/time/meter.ts';
import { secondsAt, steadyTempo, type TempoMap, tickAt } from '../../../src/core/time/tempoMap.ts';
import { meter } from '../../support/music.ts';

describe('a steady tempo', () => {
  it.each([
    [120, 480, 1920, 2],
    [60, 480, 480, 1],
    [97, 480, 480, 60 / 97],
    [60, 720, 1440, 2],
    [90, 720, 720, 2 / 3],
    [60, 960, 1920, 2],
  ])(
    'of %d to the minute, %i ticks each, puts tick %i at %d s (computed)',
    (bpm, beat, tick, seconds) =>
      expect(secondsAt(steadyTempo(bpm, beat), tick)).toBeCloseTo(seconds, 12),
  );

  it('counts the dotted quarter in 6/8: two beats to a bar', () => {
    const sixEight = meter('6/8');
    const slow = steadyTempo(60, tempoBeatTicks(sixEight));
    expect(secondsAt(slow, barTicks(sixEight))).toBe(2);
  });

  it('reaches back before bar 1 for a count-in', () =>
    expect(secondsAt(steadyTempo(120), -1920)).toBe(-2));

  it.each([0, -60, Number.NaN, Number.POSITIVE_INFINITY])('is never %d', (bpm) =>
    expect(() => steadyTempo(bpm)).toThrow('tempo must be positive'),
  );
});

describe('a tempo map', () => {
  const map: TempoMap = [
    { tick: 0, tempo: { bpm: 120, beatTicks: 480 } },
    { tick: 1920, tempo: { bpm: 60, beatTicks: 480 } },
    { tick: 3840, tempo: { bpm: 60, beatTicks: 720 } },
  ];

  it.each([
    [0, 0],
    [1920, 2],
    [2400, 3],
    [3840, 6],
    [5280, 8],
    [-480, -0.5],
  ])('puts tick %i at %d s (computed)', (tick, seconds) => {
    expect(secondsAt(map, tick)).toBeCloseTo(seconds, 12);
    expect(tickAt(map, seconds)).toBeCloseTo(tick, 9);
  });

  it('without marks is a program error', () => expect(() => secondsAt([], 0)).toThrow('tick 0'));
});

/** Up to eight tempo marks at whole ticks, the first at 0. */
function tempoMaps(): fc.Arbitrary<TempoMap> {
  const tempo = fc.record({
    bpm: fc.integer({ min: 20, max: 320 }),
    beatTicks: fc.constantFrom(240, 480, 720, 960),
  });
  return fc
    .array(fc.record({ gap: fc.integer({ min: 1, max: 20000 }), tempo }), {
      minLength: 1,
      maxLength: 8,
    })
    .map((marks) => {
      let tick = 0;
      return marks.map((mark, i) => {
        tick += i === 0 ? 0 : mark.gap;
        return { tick, tempo: mark.tempo };
      });
    });
}

const ticks = () => fc.integer({ min: -10000, max: 200000 });

describe('for every tempo map', () => {
  it('seconds lead back to the tick they came from', () =>
    fc.assert(
      fc.property(tempoMaps(), ticks(), (map, tick) => {
        expect(tickAt(map, secondsAt(map, tick))).toBeCloseTo(tick, 6);
      }),
    ));

  it('ticks lead back to the seconds they came from', () =>
    fc.assert(
      fc.property(tempoMaps(), fc.double({ min: -20, max: 500, noNaN: true }), (map, seconds) => {
        expect(secondsAt(map, tickAt(map, seconds))).toBeCloseTo(seconds, 9);
      }),
    ));

  it('a later tick sounds later', () =>
    fc.assert(
      fc.property(tempoMaps(), ticks(), fc.integer({ min: 1, max: 5000 }), (map, tick, later) => {
        expect(secondsAt(map, tick + later)).toBeGreaterThan(secondsAt(map, tick));
      }),
    ));
});
