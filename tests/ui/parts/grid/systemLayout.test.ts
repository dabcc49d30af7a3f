import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Division } from '../../../../src/core/rhythm/pattern.ts';
import {
  barsPerSystem,
  type Grid,
  systemAt,
  systemsOf,
  tickAtX,
  tickX,
} from '../../../../src/ui/parts/grid/systemLayout.ts';
import { meter } from '../../../support/music.ts';

function grid(meterText: string, bars: number, division: Division): Grid {
  const beats = { '4/4': 4, '3/4': 3, '6/8': 2, '12/8': 4 }[meterText]!;
  return {
    meter: meter(meterText),
    bars,
    divisions: Array.from({ length: bars * beats }, () => division),
  };
}

it.each([
  ['two bars of eighths on a tablet', grid('4/4', 2, 2), 984, 2],
  ['two bars of sixteenths on a tablet', grid('4/4', 2, 4), 984, 1],
  ['two bars of sixteenths on a wide page', grid('4/4', 2, 4), 1400, 2],
  ['four bars of eighths on a tablet', grid('4/4', 4, 2), 984, 2],
  ['four bars of quarters on a tablet', grid('4/4', 4, 1), 984, 4],
  ['one bar of thirty-seconds on a narrow page', grid('4/4', 1, 8), 744, 1],
  ['two bars of 12/8 on a tablet', grid('12/8', 2, 3), 984, 1],
])('stands %s in systems that can be read', (_name, pattern, width, bars) => {
  expect(barsPerSystem(pattern, width)).toBe(bars);
});

it('stacks the bars of a pattern in systems that together hold every step once', () => {
  const systems = systemsOf(grid('4/4', 4, 4), 984);
  expect(systems.map(({ firstBar, bars }) => [firstBar, bars])).toEqual([
    [0, 1],
    [1, 1],
    [2, 1],
    [3, 1],
  ]);
  expect(systems.flatMap(({ steps }) => steps.map(({ column }) => column))).toEqual(
    Array.from({ length: 64 }, (_, i) => i),
  );
});

it('gives a beat the same room however it is divided', () => {
  const [system] = systemsOf({ meter: meter('2/4'), bars: 1, divisions: [1, 4] }, 934);
  expect(system!.steps.map(({ width }) => width)).toEqual([400, 100, 100, 100, 100]);
});

it('finds the tick at the x where it is drawn', () => {
  const [system] = systemsOf(grid('6/8', 1, 3), 1000);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1440 }), (tick) => {
      expect(tickAtX(system!, tickX(system!, tick))).toBeCloseTo(tick, 6);
    }),
  );
});

it('finds the system in which a tick lies, and none outside the pattern', () => {
  const systems = systemsOf(grid('4/4', 2, 4), 984);
  expect(systemAt(systems, 1920)?.firstBar).toBe(1);
  expect(systemAt(systems, 3840)).toBeUndefined();
});
