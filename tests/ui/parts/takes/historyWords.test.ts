import { describe, expect, it } from 'vitest';
import {
  aheadOfUtcMinutes,
  howWords,
  localDay,
  longDay,
  notKeptSentence,
  partWords,
  shortDay,
} from '../../../../src/ui/parts/takes/historyWords.ts';
import { fourHits } from '../../../support/takeRecords.ts';
import { expectedHit, playedHit, scoreOf } from '../../../support/takes.ts';

describe('a take in words', () => {
  it.each([
    [1, 'clean'],
    [2, 'clean, twice through'],
    [5, 'clean, 5 times through'],
    [0, 'clean, broken off'],
  ])('is clean, %i times through', (passes, words) =>
    expect(howWords({ score: fourHits(), passes })).toBe(words),
  );

  it('says what was not clean about it', () => {
    const score = scoreOf(
      [
        [expectedHit(0, 'left', { keys: [48] }), 0],
        [expectedHit(0.5), 'missed'],
        [expectedHit(1), 120],
      ],
      [playedHit(5, 'left')],
    );
    expect(howWords({ score, passes: 1 })).toBe(
      'not clean: 1 of 3 left out, 1 out of time, 1 too many',
    );
    expect(
      howWords({
        score: { ...score, keys: { hits: 2, wrongHits: 2, wrongKeys: 2, absentKeys: 0 } },
        passes: 3,
      }),
    ).toBe(
      'not clean: 1 of 3 left out, 1 out of time, 1 too many, 2 with a wrong note, 3 times through',
    );
  });

  it('says the hands, and the level where that is not all', () => {
    expect(partWords({ hand: 'both' })).toBe('both hands');
    expect(partWords({ hand: 'left', level: 2 })).toBe('left hand, level 2');
  });
});

describe('days', () => {
  it('are those of the place where one plays', () => {
    const late = new Date(2026, 2, 3, 23, 59).getTime();
    expect(localDay(late)).toBe('2026-03-03');
    expect(localDay(late + 60_000)).toBe('2026-03-04');
  });

  it('are written short under a plot and long over takes', () => {
    expect(shortDay('2026-03-03')).toBe('3 Mar');
    expect(longDay('2026-03-03')).toBe('Tuesday, 3 March 2026');
  });

  it('lie so far ahead of UTC as the clock does', () => {
    const at = new Date(2026, 2, 3, 12);
    expect(aheadOfUtcMinutes(at.getTime())).toBe(
      (Date.UTC(2026, 2, 3, 12) - at.getTime()) / 60_000,
    );
  });
});

it('says plainly that what is not kept still counts', () => {
  for (const kind of ['unavailable', 'full', 'failed', 'newer-version'] as const)
    expect(notKeptSentence({ kind, reason: '' })).toMatch(/ counts until the page is closed\.$/);
});
