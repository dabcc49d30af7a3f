import { describe, expect, it } from 'vitest';
import { scoreTake } from '../../../src/core/practice/takeScore.ts';
import type { HandName } from '../../../src/core/voicing/voicing.ts';
import { type Attempt, expectedHit, playedHit, scoreOf } from '../../support/takes.ts';

/** Both hands on every half second, each hit so much late; or missed. */
function bothHands(
  leftMs: readonly (number | 'missed')[],
  rightMs: readonly (number | 'missed')[],
): Attempt[] {
  return leftMs.flatMap((left, i): Attempt[] => [
    [expectedHit(i / 2, 'left'), left],
    [expectedHit(i / 2, 'right'), rightMs[i]!],
  ]);
}

function isClean(laterMs: readonly (number | 'missed')[]): boolean {
  return scoreOf(laterMs.map((ms, i): Attempt => [expectedHit(i / 2), ms])).clean;
}

/** A hit of a one-bar pattern at 120 bpm. */
function step(bar: number, hand: HandName, patternTick: number) {
  return expectedHit(2 * bar + patternTick / 960, hand, { patternTick, patternId: 'p' });
}

describe('the score of a take', () => {
  it('of nothing played, where something was expected', () => {
    const score = scoreOf(bothHands(['missed', 'missed'], ['missed', 'missed']));
    expect(score).toMatchObject({
      expected: 4,
      played: 0,
      matched: 0,
      precision: 0,
      recall: 0,
      f: 0,
      all: { hits: 0 },
      clean: false,
    });
    expect(score.all.meanMs).toBeUndefined();
    expect(score.hands.map((hand) => [hand.hand, hand.expected, hand.hits])).toEqual([
      ['left', 2, 0],
      ['right', 2, 0],
    ]);
    expect(score.drift).toBeUndefined();
    expect(score.keys).toBeUndefined();
    expect(score.changes).toBeUndefined();
  });

  it('of all played wrong', () =>
    expect(
      scoreTake({ pairs: [], missed: [expectedHit(0)], extra: [playedHit(0.5, 'left')] }),
    ).toMatchObject({ precision: 0, recall: 0, f: 0, clean: false, hands: [{ extra: 1 }] }));

  it('of a perfect take', () =>
    expect(scoreOf(bothHands([0, 0, 0], [0, 0, 0]))).toMatchObject({
      expected: 6,
      played: 6,
      matched: 6,
      precision: 1,
      recall: 1,
      f: 1,
      all: { hits: 6, meanMs: 0, spreadMs: 0 },
      grades: { 'very-good': 6, good: 0, fair: 0, off: 0 },
      clean: true,
    }));

  it('of nothing expected and nothing played is neither clean nor wrong', () =>
    expect(scoreTake({ pairs: [], missed: [], extra: [] })).toMatchObject({
      precision: 1,
      recall: 1,
      f: 1,
      hands: [],
      steps: [],
      clean: false,
    }));

  // Left: +10 +20 +30 +20 ms, so mean 20 and squares 100 + 0 + 100 + 0 over 3. Right: −5, −15 and
  // two missed, so mean −10 and squares 25 + 25 over 1. One extra hit: 6 of 7 meant, 6 of 8 played.
  it('of a known take has its known numbers', () => {
    const score = scoreOf(bothHands([10, 20, 30, 20], [-5, 'missed', -15, 'missed']), [
      playedHit(1.25, 'right'),
    ]);
    expect(score.precision).toBeCloseTo(6 / 7, 12);
    expect(score.recall).toBeCloseTo(6 / 8, 12);
    expect(score.f).toBeCloseTo(12 / 15, 12);
    const [left, right] = score.hands;
    expect(left).toMatchObject({ hand: 'left', expected: 4, hits: 4, extra: 0 });
    expect(left?.meanMs).toBeCloseTo(20, 9);
    expect(left?.spreadMs).toBeCloseTo(Math.sqrt(200 / 3), 9);
    expect(left?.unevennessMs).toBeCloseTo(Math.sqrt(200 / 3), 9);
    expect(right).toMatchObject({ hand: 'right', expected: 4, hits: 2, extra: 1 });
    expect(right?.meanMs).toBeCloseTo(-10, 9);
    expect(right?.spreadMs).toBeCloseTo(Math.sqrt(50), 9);
    expect(score.all.meanMs).toBeCloseTo(60 / 6, 9);
  });

  it('is clean up to a tenth of the hits out of time', () => {
    const nine = [0, 10, -10, 5, 49, -49, 20, 0, 0];
    expect(isClean([...nine, 0])).toBe(true);
    expect(isClean([...nine, 'missed'])).toBe(true);
    expect(isClean([...nine, 55])).toBe(true);
    expect(isClean(['missed', ...nine.slice(1), 55])).toBe(false);
  });

  it('is not clean with more than a tenth of extra hits', () => {
    const nine = Array.from({ length: 9 }, (_, i): Attempt => [expectedHit(i / 2), 0]);
    expect(scoreOf(nine, [playedHit(0.25, 'left')]).clean).toBe(true);
    expect(scoreOf(nine, [playedHit(0.25, 'left'), playedHit(0.75, 'left')]).clean).toBe(false);
  });

  it('counts hits in the bands that follow their own gap', () =>
    expect(
      scoreOf([
        [expectedHit(0, 'left', { gapSec: 0.5 }), 30],
        [expectedHit(1, 'left', { gapSec: 0.2 }), 30],
        [expectedHit(2, 'left', { gapSec: 1 }), 30],
      ]).grades,
    ).toEqual({ 'very-good': 1, good: 1, fair: 0, off: 1 }));
});

describe('the steps of a pattern', () => {
  it('are told apart by place and hand, over all passes', () => {
    const { steps } = scoreOf([
      [step(0, 'left', 0), 10],
      [step(0, 'right', 0), 0],
      [step(0, 'left', 960), 'missed'],
      [step(1, 'left', 0), 30],
      [step(1, 'right', 0), 0],
      [step(1, 'left', 960), -20],
    ]);
    expect(steps).toMatchObject([
      { hand: 'left', patternId: 'p', patternTick: 0, expected: 2, hits: 2 },
      { hand: 'right', patternTick: 0, expected: 2, hits: 2 },
      { hand: 'left', patternTick: 960, expected: 2, hits: 1 },
    ]);
    expect(steps[0]?.meanMs).toBeCloseTo(20, 9);
    expect(steps[0]?.spreadMs).toBeCloseTo(Math.sqrt(200), 9);
    expect(steps[2]?.meanMs).toBeCloseTo(-20, 9);
    expect(steps[2]?.spreadMs).toBeUndefined();
  });

  it('are none where the hits come from no pattern', () =>
    expect(scoreOf([[expectedHit(0), 0]]).steps).toEqual([]));
});

describe('the keys', () => {
  it('are compared hit by hit', () => {
    const chord = expectedHit(0, 'right', { keys: [60, 64, 67] });
    const single = expectedHit(1, 'right', { keys: [72] });
    const score = scoreTake({
      pairs: [
        { expected: chord, played: playedHit(0, 'right', [60, 63, 67]), deviationSec: 0 },
        { expected: single, played: playedHit(1, 'right', [72]), deviationSec: 0 },
      ],
      missed: [],
      extra: [],
    });
    expect(score.keys).toEqual({ hits: 2, wrongHits: 1, wrongKeys: 1, absentKeys: 1 });
    expect(score.clean).toBe(false);
  });
});

describe('chord changes', () => {
  it('are compared with all other hits', () => {
    // Changes at 1 and 2 s; the hits there come 40 ms later than those between, which are 2 ms apart.
    const attempts = [0, 0.5, 1, 1.5, 2, 2.5].map((atSec, i): Attempt => {
      const isChange = atSec === 1 || atSec === 2;
      return [expectedHit(atSec), (i % 2 === 0 ? 10 : 12) + (isChange ? 40 : 0)];
    });
    const { changes } = scoreOf(attempts, [], { changesSec: [1, 2] });
    // At changes 50, 50; elsewhere 10, 12, 12, 12 with mean 11.5 and sample deviation 1.
    expect(changes?.hits).toBe(2);
    expect(changes?.laterMs).toBeCloseTo(38.5, 9);
    expect(changes?.errorMs).toBeCloseTo(0.5, 9);
  });

  it('belong to the hand’s first hit after them, however much later', () => {
    const attempts = [0, 0.5, 1.25, 1.5, 2.25, 2.5].map(
      (atSec): Attempt => [expectedHit(atSec), atSec % 0.5 === 0 ? 0 : 20],
    );
    expect(scoreOf(attempts, [], { changesSec: [1, 2] }).changes).toMatchObject({ hits: 2 });
    expect(scoreOf(attempts, [], { changesSec: [1, 2] }).changes?.laterMs).toBeCloseTo(20, 9);
  });
});
