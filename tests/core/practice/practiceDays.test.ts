import { describe, expect, it } from 'vitest';
import { practiceDays, targetsOf } from '../../../src/core/practice/practiceDays.ts';
import { fourHits, takeRecord } from '../../support/takeRecords.ts';
import { expectedHit, scoreOf } from '../../support/takes.ts';

const DAY = 86_400_000;
const dayOf = (atMs: number) => new Date(atMs).toISOString().slice(0, 10);

/** Four hits of a hand, the second and fourth so much later than the others. */
function uneven(hand: 'left' | 'right', ms: number) {
  return scoreOf(
    [0, 1, 2, 3].map((beat) => [expectedHit(beat / 2, hand), beat % 2 === 1 ? ms : 0]),
  );
}

describe('days of practice', () => {
  it('are in order, each with its takes', () => {
    const days = practiceDays(
      [takeRecord({ atMs: 2 * DAY }), takeRecord({ atMs: 5 }), takeRecord({ atMs: 7 })],
      dayOf,
    );
    expect(days.map(({ day, takes }) => [day, takes])).toEqual([
      ['1970-01-01', 2],
      ['1970-01-03', 1],
    ]);
  });

  it('tell the fastest clean tempo by hand, of the whole part, played through', () => {
    const [day] = practiceDays(
      [
        takeRecord({ bpm: 80 }),
        takeRecord({ bpm: 90 }),
        takeRecord({ bpm: 100, score: fourHits(false) }),
        takeRecord({ bpm: 110, passes: 0 }),
        takeRecord({ bpm: 120, level: 2 }),
        takeRecord({ bpm: 130, hand: 'left' }),
      ],
      dayOf,
    );
    expect(day?.cleanBpm).toEqual({ both: 90, left: 130 });
  });

  it('tell the median of what each hand was uneven by', () => {
    const scores = [uneven('left', 30), uneven('left', 10), uneven('left', 50), uneven('right', 4)];
    const [day] = practiceDays(
      scores.map((score) => takeRecord({ score })),
      dayOf,
    );
    expect(day?.unevennessMs['left']).toBe(scores[0]!.hands[0]!.unevennessMs);
    expect(day?.unevennessMs['right']).toBe(scores[3]!.hands[0]!.unevennessMs);
    expect(day?.unevennessMs['both']).toBeUndefined();
    const [two] = practiceDays(
      scores.slice(0, 2).map((score) => takeRecord({ score })),
      dayOf,
    );
    const mean = (scores[0]!.hands[0]!.unevennessMs! + scores[1]!.hands[0]!.unevennessMs!) / 2;
    expect(two?.unevennessMs['left']).toBeCloseTo(mean, 9);
  });

  it('are none without takes', () => expect(practiceDays([], dayOf)).toEqual([]));
});

it('finds what was practised, what was last played first', () => {
  const pattern = { kind: 'pattern', patternId: 'p' } as const;
  const song = { kind: 'song' } as const;
  expect(
    targetsOf([
      takeRecord({ atMs: 1, target: song }),
      takeRecord({ atMs: 2, target: pattern }),
      takeRecord({ atMs: 3, target: song }),
    ]),
  ).toEqual([song, pattern]);
});
