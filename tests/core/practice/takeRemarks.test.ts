import { describe, expect, it } from 'vitest';
import { type TakeRemark, takeRemarks } from '../../../src/core/practice/takeRemarks.ts';
import { weakSteps } from '../../../src/core/practice/weakSteps.ts';
import { type Attempt, expectedHit, playedHit, scoreOf } from '../../support/takes.ts';

/** Sixteen hits of one hand every half second; `laterMs` says how late the ith is. */
function row(hand: 'left' | 'right', laterMs: (i: number) => number | 'missed'): Attempt[] {
  return Array.from({ length: 16 }, (_, i) => [
    expectedHit(i / 2, hand, { patternTick: (i % 4) * 480 }),
    laterMs(i),
  ]);
}

/** Even enough not to be told: 4 ms to either side. */
const wobble = (i: number) => (i % 2 === 0 ? 4 : -4);

function kinds(remarks: readonly TakeRemark[]): string[] {
  return remarks.map((remark) => remark.kind);
}

describe('what is said of a take', () => {
  it('that nothing was played, and nothing else', () =>
    expect(takeRemarks(scoreOf(row('left', () => 'missed')))).toEqual([
      { kind: 'nothing-played' },
    ]));

  it('that it was something else, if hardly anything fits', () => {
    const played = [0.25, 0.75, 1.25].map((at) => playedHit(at, 'left'));
    expect(
      takeRemarks(
        scoreOf(
          row('left', (i) => (i === 0 ? 0 : 'missed')),
          played,
        ),
      ),
    ).toEqual([{ kind: 'unrelated', matched: 1, expected: 16 }]);
  });

  it('that it was clean and even', () =>
    expect(kinds(takeRemarks(scoreOf(row('left', wobble))))).toEqual(['clean', 'even']));

  it('which hand is late, and how badly at this tempo', () => {
    const remarks = takeRemarks(scoreOf([...row('left', (i) => 30 + wobble(i))]));
    expect(remarks).toContainEqual({
      kind: 'late',
      hand: 'left',
      ms: expect.closeTo(30, 9),
      grade: 'good',
    });
  });

  it('nothing of lateness that nobody hears', () =>
    expect(kinds(takeRemarks(scoreOf(row('left', (i) => 15 + wobble(i)))))).not.toContain('late'));

  it('that a hand is uneven', () => {
    const remarks = takeRemarks(scoreOf(row('right', (i) => (i % 2 === 0 ? 40 : -40))));
    expect(remarks).toContainEqual({
      kind: 'uneven',
      hand: 'right',
      ms: expect.closeTo(41.31, 1),
      grade: 'fair',
    });
  });

  it('what was missed, extra and wrong', () => {
    const attempts = row('left', (i) => (i % 4 === 3 ? 'missed' : wobble(i)));
    const remarks = takeRemarks(scoreOf(attempts, [playedHit(0.25, 'left')]));
    expect(remarks).toContainEqual({ kind: 'missed', hand: 'left', hits: 4, expected: 16 });
    expect(remarks).toContainEqual({ kind: 'extra', hits: 1, played: 13 });
    expect(kinds(remarks)).not.toContain('clean');
  });

  it('that the tempo drifts, if that can be noticed', () => {
    const [faster, steadier] = [1.8, 1].map((percent) =>
      scoreOf(row('left', (i) => -i * 5 * percent + wobble(i))),
    );
    expect(kinds(takeRemarks(faster!))).toContain('drift');
    expect(kinds(takeRemarks(steadier!))).not.toContain('drift');
  });

  it('which hand comes first, where the hands are apart', () => {
    const hands = [...row('left', (i) => -12 + wobble(i)), ...row('right', (i) => 12 + wobble(i))];
    const remarks = takeRemarks(
      scoreOf(hands.toSorted(([one], [other]) => one.atSec - other.atSec)),
    );
    expect(remarks).toContainEqual({
      kind: 'hands-apart',
      first: 'left',
      ms: expect.closeTo(24, 9),
    });
  });

  it('that chord changes come late', () => {
    const changesSec = [2, 4, 6];
    const late = scoreOf(
      row('left', (i) => (i > 0 && i % 4 === 0 ? 30 : 0) + wobble(i)),
      [],
      { changesSec },
    );
    expect(kinds(takeRemarks(late))).toContain('late-changes');
    expect(kinds(takeRemarks(scoreOf(row('left', wobble), [], { changesSec })))).not.toContain(
      'late-changes',
    );
  });
});

describe('the weakest steps', () => {
  it('are those that are missed or come beside their hand, weakest first', () => {
    const score = scoreOf(
      row('left', (i) => {
        if (i % 4 === 1) return i < 9 ? 'missed' : 0;
        return i % 4 === 2 ? 40 + (i === 2 ? 2 : -2) : 0;
      }),
    );
    // Fourteen hits, 156 ms late in all: 11.14 ms on average. Step 1 has two of four missed, and the
    // others are too few to say that they come that much early; step 2 comes 39 − 11.14 ms late;
    // “fair” is 50 ms.
    expect(weakSteps(score)).toMatchObject([
      { patternTick: 960, missed: 0, weakness: expect.closeTo(27.86 / 50, 3) },
      { patternTick: 480, missed: 2, weakness: expect.closeTo(0.5, 3) },
    ]);
  });

  it('are not those of a few hits that happen to agree in a hand that scatters', () => {
    const score = scoreOf(row('left', (i) => (i % 4 === 1 ? 20 : [-20, 0, 20, -20, 20][i % 5]!)));
    const twice = score.steps.map((step) => ({ ...step, hits: 2, expected: 2 }));
    expect(weakSteps({ ...score, steps: twice })).toEqual([]);
  });

  it('are none in an even take', () => expect(weakSteps(scoreOf(row('left', wobble)))).toEqual([]));
});
