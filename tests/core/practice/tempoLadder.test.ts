import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type LadderStep,
  nextRung,
  rungsOf,
  type TempoLadder,
} from '../../../src/core/practice/tempoLadder.ts';

function ladder(
  startBpm: number,
  goalBpm: number,
  step: LadderStep,
  climb: TempoLadder['climb'] = 'always',
): TempoLadder {
  return { startBpm, goalBpm, step, passesPerRung: 2, climb };
}

const bpm = (size: number): LadderStep => ({ kind: 'bpm', bpm: size });
const percent = (size: number): LadderStep => ({ kind: 'percent', percent: size });
const marks: LadderStep = { kind: 'marks' };

describe('the rungs of a ladder', () => {
  it.each([
    [60, 100, bpm(10), [60, 70, 80, 90, 100]],
    [60, 100, bpm(15), [60, 75, 90, 100]],
    [60, 65, bpm(2.5), [60, 63, 65]],
    [60, 62, bpm(0.1), [60, 61, 62]],
    [72.5, 80, bpm(4), [72.5, 77, 80]],
    [60, 100, percent(10), [60, 66, 73, 80, 88, 97, 100]],
    [40, 43, percent(1), [40, 41, 42, 43]],
    [60, 92.5, percent(50), [60, 90, 92.5]],
    [80, 80, bpm(5), [80]],
    [120, 80, bpm(5), [80]],
    // Marks of the metronome: docs/sources.md#metronome-marks.
    [60, 76, marks, [60, 63, 66, 69, 72, 76]],
    [61, 70, marks, [61, 63, 66, 69, 70]],
    [30, 42, marks, [30, 40, 42]],
    [200, 230, marks, [200, 208, 216, 224, 230]],
  ])('from %d to %d by %j are %j', (start, goal, step, rungs) =>
    expect(rungsOf(ladder(start, goal, step))).toEqual(rungs),
  );

  it('rise by at least 1 bpm (or what is left) to the goal and never beyond', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 320 }),
        fc.integer({ min: 20, max: 320 }),
        fc.oneof(
          fc.double({ min: 0, max: 40, noNaN: true }).map(bpm),
          fc.double({ min: 0, max: 40, noNaN: true }).map(percent),
          fc.constant(marks),
        ),
        (start, goal, step) => {
          const rungs = rungsOf(ladder(start, goal, step));
          expect(rungs.at(-1)).toBe(goal);
          expect(rungs[0]).toBe(Math.min(start, goal));
          expect(rungs.slice(1).every((rung, i) => rung - rungs[i]! >= 1)).toBe(true);
        },
      ),
    ));

  it('do not exist without a tempo', () =>
    expect(() => rungsOf(ladder(0, 100, bpm(5)))).toThrow('from 0 to 100'));
});

describe('after the passes of a rung', () => {
  const always = ladder(60, 80, bpm(10));
  const whenClean = ladder(60, 80, bpm(10), 'when-clean');

  it.each([{ clean: true }, { clean: false }, undefined])(
    'a ladder that always climbs goes up (%j)',
    (score) => expect(nextRung(always, 0, score)).toBe(1),
  );

  it('a ladder that climbs when clean goes up only then', () => {
    expect(nextRung(whenClean, 1, { clean: true })).toBe(2);
    expect(nextRung(whenClean, 1, { clean: false })).toBe(1);
    expect(nextRung(whenClean, 1, undefined)).toBe(1);
  });

  it('the top is not left', () => expect(nextRung(always, 2, { clean: true })).toBe(2));

  it('a rung above a ladder that was made shorter is its top', () =>
    expect(nextRung(whenClean, 7, undefined)).toBe(2));

  it('a ladder that climbs by hand stays, whatever was played', () => {
    const byHand = { ...ladder(60, 80, bpm(10), 'by-hand'), fallBackAfter: 1 };
    for (const score of [{ clean: true }, { clean: false, uncleanInARow: 3 }, undefined])
      expect(nextRung(byHand, 1, score)).toBe(1);
  });

  it('so many rungs that were not clean lead one down, but not below the first', () => {
    const falling = { ...whenClean, fallBackAfter: 2 };
    expect(nextRung(falling, 1, { clean: false })).toBe(1);
    expect(nextRung(falling, 1, { clean: false, uncleanInARow: 2 })).toBe(0);
    expect(nextRung(falling, 0, { clean: false, uncleanInARow: 2 })).toBe(0);
    expect(nextRung(falling, 1, undefined)).toBe(1);
    expect(nextRung(falling, 1, { clean: true })).toBe(2);
  });
});
