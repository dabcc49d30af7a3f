import { expect, it } from 'vitest';
import { patternSteps } from '../../../../src/core/rhythm/pattern.ts';
import {
  grippedBy,
  hitUnder,
  lengthDrawnTo,
  nearestColumn,
  spotAt,
  strokeNear,
  tickDrawnTo,
  tiedUnder,
} from '../../../../src/ui/parts/grid/gridSpot.ts';
import { rowKey, rowLayout, rowsOf } from '../../../../src/ui/parts/grid/rowLayout.ts';
import { systemsOf, tickX } from '../../../../src/ui/parts/grid/systemLayout.ts';
import { pattern, source } from '../../../support/patterns.ts';

const shown = pattern('4/4', { left: 'R---5---'.repeat(2) + 'R---5---'.repeat(2) }, { bars: 2 });
const systems = systemsOf(shown, 984);
const rows = rowLayout(rowsOf([]), 0);
const corners = [
  { left: 20, top: 100 },
  { left: 20, top: 400 },
];

it('finds row, system and tick under the pointer', () => {
  const x = 20 + tickX(systems[1]!, 2880);
  const spot = spotAt(systems, corners, rows, { x, y: 400 + rows.height - 5 })!;
  expect(rowKey(spot.row)).toBe('left');
  expect(spot.system.firstBar).toBe(1);
  expect(spot.tick).toBeCloseTo(2880, 6);
});

it('takes the nearest place for a pointer outside the systems', () => {
  const above = spotAt(systems, corners, rows, { x: -50, y: 0 })!;
  expect([rowKey(above.row), above.tick]).toEqual(['right', 0]);
  const below = spotAt(systems, corners, rows, { x: 5000, y: 5000 })!;
  expect(rowKey(below.row)).toBe('left');
  expect(below.tick).toBeLessThan(3840);
  expect(spotAt([], [], rows, { x: 0, y: 0 })).toBeUndefined();
});

it('holds a hit by its end near the end, by its body elsewhere', () => {
  const hit = shown.left[0]!;
  const system = systems[0]!;
  const end = tickX(system, hit.at + hit.length);
  expect(grippedBy(hit, { system, x: end - 5 }, 9)).toBe('end');
  expect(grippedBy(hit, { system, x: end - 20 }, 9)).toBe('body');
});

it('finds the hit that sounds at a tick, up to its end', () => {
  expect(hitUnder(shown.left, 479.9)?.at).toBe(0);
  expect(hitUnder(shown.left, 480)?.at).toBe(480);
});

it('moves to the nearest step and draws out to the nearest end of a step', () => {
  const steps = patternSteps(pattern('4/4', { left: 'R---5---' }));
  expect([
    nearestColumn(steps, -200),
    nearestColumn(steps, 130),
    nearestColumn(steps, 9999),
  ]).toEqual([0, 1, 7]);
  expect(lengthDrawnTo(steps, { at: 480 }, 1000)).toBe(480);
  expect(lengthDrawnTo(steps, { at: 480 }, 0)).toBe(240);
});

it('draws out over the end of the pattern, a step further every few pixels beyond its last line', () => {
  const steps = patternSteps(shown);
  const at = (system: 0 | 1, beyond: number) =>
    spotAt(systems, corners, rows, {
      x: 20 + systems[system]!.right + beyond,
      y: system === 0 ? 150 : 450,
    })!;
  const drawn = (system: 0 | 1, beyond: number) =>
    lengthDrawnTo(steps, { at: 3600 }, tickDrawnTo(steps, at(system, beyond)));
  expect([0, 13, 15, 29, 45].map((beyond) => drawn(1, beyond))).toEqual([240, 240, 360, 480, 600]);
  expect(drawn(0, 44)).toBe(120);
  expect(drawn(1, 9999)).toBe(240 + 3840);
});

it('finds what is tied over from the end, up to the end of its tie', () => {
  const tied = [{ ...shown.left[0]!, at: 3600, length: 720 }];
  expect([0, 479].map((tick) => tiedUnder(tied, tick, 3840))).toEqual([tied[0], tied[0]]);
  expect(tiedUnder(tied, 480, 3840)).toBeUndefined();
  expect(tiedUnder(shown.left, 0, 3840)).toBeUndefined();
});

it('finds the stroke that a finger means, also beside its lane, and none that is out of reach', () => {
  const snare = source(shown, 'snare', '....x...'.repeat(4));
  const withLane = rowLayout(rowsOf([snare]), 0);
  const x = 20 + tickX(systems[1]!, 2400) + 6;
  const near = (dx: number, dy: number) =>
    strokeNear(systems, corners, withLane, { x: x + dx, y: 400 + dy })?.stroke.at;
  expect(near(0, 9)).toBe(2400);
  expect([near(20, -10), near(-20, 28)]).toEqual([2400, 2400]);
  expect([near(0, 40), near(60, 9)]).toEqual([undefined, undefined]);
});
