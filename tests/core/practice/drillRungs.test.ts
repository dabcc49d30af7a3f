import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type DrillRung,
  drillRungs,
  isPassAtGoal,
  nextDrillRung,
  passBpm,
  passesOnRung,
  tellingLevels,
} from '../../../src/core/practice/drillRungs.ts';
import {
  CLIMB_ORDERS,
  nextRung,
  rungsOf,
  type TempoLadder,
} from '../../../src/core/practice/tempoLadder.ts';
import type { Level } from '../../../src/core/rhythm/levels.ts';
import { pattern } from '../../support/patterns.ts';

const LADDER: TempoLadder = {
  startBpm: 60,
  goalBpm: 80,
  step: { kind: 'bpm', bpm: 10 },
  passesPerRung: 2,
  climb: 'always',
};

type Order = (typeof CLIMB_ORDERS)[number];

function climbing(from: Level, order: Order): TempoLadder {
  return { ...LADDER, levels: { from, order } };
}

/** `60/2` is 60 beats a minute at level 2, `60` all of the part. */
function names(rungs: readonly DrillRung[]): string {
  return rungs.map(({ bpm, level }) => (level ? `${bpm}/${level}` : String(bpm))).join(' ');
}

describe('the rungs of a drill', () => {
  it('are the tempos of the ladder at the one level where nothing else climbs', () => {
    expect(names(drillRungs(LADDER, undefined))).toBe('60 70 80');
    expect(names(drillRungs(LADDER, 2))).toBe('60/2 70/2 80/2');
  });

  it.each<[Order, Level, Level | undefined, string]>([
    ['levels-first', 3, undefined, '60/3 60/4 60 70 80'],
    ['levels-first', 2, 3, '60/2 60/3 70/3 80/3'],
    ['levels-at-each-tempo', 4, undefined, '60/4 60 70/4 70 80/4 80'],
    ['tempos-at-each-level', 4, undefined, '60/4 70/4 80/4 60 70 80'],
    ['tempos-at-each-level', 2, 2, '60/2 70/2 80/2'],
    ['levels-first', 3, 2, '60/2 70/2 80/2'],
  ])('climb levels too: %s from %j to %j are %s', (order, from, to, rungs) =>
    expect(names(drillRungs(climbing(from, order), to))).toBe(rungs),
  );

  it('begin with the slowest tempo and end with the goal at the level of the drill, none twice', () =>
    fc.assert(
      fc.property(
        fc.record({
          startBpm: fc.integer({ min: 20, max: 320 }),
          goalBpm: fc.integer({ min: 20, max: 320 }),
          step: fc.integer({ min: 5, max: 40 }).map((bpm) => ({ kind: 'bpm', bpm }) as const),
          passesPerRung: fc.constant(1),
          climb: fc.constant('always' as const),
          levels: fc.record({
            from: fc.constantFrom<Level>(1, 2, 3, 4, 5),
            order: fc.constantFrom(...CLIMB_ORDERS),
          }),
        }),
        fc.constantFrom<Level | undefined>(1, 2, 3, 4, 5, undefined),
        (ladder, level) => {
          const rungs = drillRungs(ladder, level);
          expect(rungs[0]?.bpm).toBe(rungsOf(ladder)[0]);
          expect(rungs.at(-1)).toEqual({
            bpm: ladder.goalBpm,
            ...(level !== undefined && { level }),
          });
          expect(new Set(names(rungs).split(' ')).size).toBe(rungs.length);
        },
      ),
    ));

  it('are climbed as the ladder says: so with tempos alone, on with levels', () => {
    const scores = [{ clean: true }, { clean: false, uncleanInARow: 2 }, undefined];
    const ladder: TempoLadder = { ...LADDER, climb: 'when-clean', fallBackAfter: 2 };
    const tempos = drillRungs(ladder, undefined);
    for (const score of scores)
      for (const held of [0, 1, 2, 9])
        expect(nextDrillRung(tempos, ladder, held, score)).toBe(nextRung(ladder, held, score));
    const rungs = drillRungs(climbing(3, 'levels-first'), undefined);
    expect(nextDrillRung(rungs, ladder, 3, { clean: true })).toBe(4);
    expect(nextDrillRung(rungs, ladder, 4, { clean: true })).toBe(4);
  });
});

describe('the levels that differ in a part', () => {
  const tempo = { bpm: 120, beatTicks: 480 };

  it('are those that leave fewer notes than all above them', () => {
    // Eighths at 120 are 0.25 s apart: level 1 keeps the beats, level 2 asks for 0.3 s, level 3 for 0.2.
    const eighths = pattern('4/4', { left: 'R-------', right: 'CCCCCCCC' });
    expect(tellingLevels(eighths, tempo)).toEqual([2]);
    expect(tellingLevels(eighths, { ...tempo, bpm: 60 })).toEqual([1]);
  });

  it('are none where the lowest is all of it', () =>
    expect(tellingLevels(pattern('4/4', { left: 'R---', right: 'C-C-' }), tempo)).toEqual([]));

  it('are the only ones that are climbed, and the level of the drill', () => {
    const ladder = climbing(1, 'levels-first');
    expect(names(drillRungs(ladder, undefined, [2]))).toBe('60/2 60 70 80');
    expect(names(drillRungs(ladder, 3, [2]))).toBe('60/2 60/3 70/3 80/3');
    expect(names(drillRungs(ladder, undefined, []))).toBe('60 70 80');
  });
});

describe('a ladder that alternates slow and full', () => {
  const alternating: TempoLadder = { ...LADDER, order: 'alternating' };

  it('follows each pass of a rung by one at the goal', () => {
    expect(passesOnRung(alternating, { bpm: 60 })).toBe(4);
    const tempos = [0, 1, 2, 3].map((pass) => passBpm(alternating, { bpm: 70 }, pass));
    expect(tempos).toEqual([70, 80, 70, 80]);
    expect(isPassAtGoal(alternating, { bpm: 70 }, 1)).toBe(true);
  });

  it('has nothing to alternate with at the goal’s tempo, whatever the level', () => {
    expect(passesOnRung(alternating, { bpm: 80, level: 2 })).toBe(2);
    expect([0, 1].map((pass) => passBpm(alternating, { bpm: 80 }, pass))).toEqual([80, 80]);
  });

  it('is what a rising ladder is not', () => {
    expect(passesOnRung(LADDER, { bpm: 60 })).toBe(2);
    expect(passBpm(LADDER, { bpm: 60 }, 1)).toBe(60);
  });
});
