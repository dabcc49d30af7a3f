import { expect, it } from 'vitest';
import { METRONOME_MARKS, markAbove } from '../../../src/core/practice/tempoMarks.ts';

// The marks of mechanical metronomes go up in steps that grow (docs/sources.md#metronome-marks).
it('the marks go from 40 to 208 in steps of 2, 3, 4, 6 and 8', () => {
  const steps = METRONOME_MARKS.slice(1).map((mark, i) => mark - METRONOME_MARKS[i]!);
  const stepsBetween = (from: number, to: number) =>
    new Set(steps.filter((_, i) => METRONOME_MARKS[i]! >= from && METRONOME_MARKS[i]! < to));
  expect(METRONOME_MARKS[0]).toBe(40);
  expect(METRONOME_MARKS.at(-1)).toBe(208);
  expect(METRONOME_MARKS).toHaveLength(39);
  expect(stepsBetween(40, 60)).toEqual(new Set([2]));
  expect(stepsBetween(60, 72)).toEqual(new Set([3]));
  expect(stepsBetween(72, 120)).toEqual(new Set([4]));
  expect(stepsBetween(120, 144)).toEqual(new Set([6]));
  expect(stepsBetween(144, 208)).toEqual(new Set([8]));
});

it.each([
  [20, 40],
  [40, 42],
  [59.5, 60],
  [100, 104],
  [207, 208],
  [208, 216],
])('the mark above %d is %d', (bpm, mark) => expect(markAbove(bpm)).toBe(mark));
