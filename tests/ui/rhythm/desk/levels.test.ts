import { describe, expect, it } from 'vitest';
import { patternLoad } from '../../../../src/app/patternLoad.ts';
import { thinnedPattern } from '../../../../src/core/rhythm/thinnedPattern.ts';
import {
  comfortWords,
  loadWords,
  spanWords,
  strainWords,
} from '../../../../src/ui/parts/pattern/levelWords.ts';
import { levelMarks } from '../../../../src/ui/rhythm/desk/useLevels.ts';
import { valueOf } from '../../../support/music.ts';
import { pattern, ticksOf } from '../../../support/patterns.ts';
import { project } from '../../../support/project.ts';

const BUSY = pattern('4/4', {
  left: 'R...5...R...5...',
  right: 'CCCCC...C...C...',
  ending: { left: 'R.R.R.R.R.......', right: 'C...............' },
});

describe('a level of a pattern', () => {
  const easiest = thinnedPattern(BUSY, 1, 90);

  it('keeps some of its hits, in the ending too', () => {
    expect(ticksOf(easiest.right)).toEqual([0, 480, 960, 1440]);
    expect(ticksOf(easiest.ending!.left)).toEqual([0, 480, 960]);
  });

  it('marks what is left out of each hand', () => {
    const load = patternLoad(project(), easiest, 90);
    const { left, right } = levelMarks(BUSY, easiest, load);
    expect([...right]).toEqual([
      [120, 'left out'],
      [240, 'left out'],
      [360, 'left out'],
    ]);
    expect(left.size).toBe(0);
  });

  it('marks what is too much where all of it is played', () => {
    const load = patternLoad(project(), BUSY, 170);
    const { right } = levelMarks(BUSY, BUSY, load);
    expect([...right.values()]).toEqual(['too much', 'too much', 'too much', 'too much']);
  });

  it('has no remarks on strain where no hands fit the chord', () => {
    const nothing = { ok: false, error: 'none' } as const;
    expect(levelMarks(BUSY, BUSY, nothing).right.size).toBe(0);
  });
});

describe('what a pattern asks, in words', () => {
  it('of a hand', () => {
    const load = { fastestRate: 2.04, fastestRepeat: 1, biggestLeap: 20, widestSpan: 7 };
    expect(loadWords({ ...load, comfortableBpm: 200 })).toBe(
      '2.0 strikes a second at the fastest, one key 1.0 times a second, leaps like an octave in 0.6 s, a span of a fifth',
    );
    const still = { ...load, biggestLeap: 0, widestSpan: 0, comfortableBpm: 200 };
    expect(loadWords(still)).toContain('no leaps, one key at a time');
  });

  it('of a hand that strikes once at the most', () => {
    const { left } = valueOf(patternLoad(project(), pattern('4/4', { right: 'C...' }), 120));
    expect(loadWords(left)).toBe('hardly anything to do.');
  });

  it.each([
    [[131.9, undefined], 'Comfortable up to about 131 beats a minute'],
    [[400, 180], 'Comfortable up to about 180 beats a minute'],
    [[undefined, undefined], 'Comfortable at any tempo'],
    [[900], 'Comfortable at any tempo'],
  ])('of limits %j: %s', (limits, words) =>
    expect(comfortWords(limits.map((comfortableBpm) => ({ comfortableBpm })))).toBe(words),
  );

  it.each([
    [0, 'one key'],
    [7, 'a fifth'],
    [12, 'an octave'],
    [14, 'a ninth'],
    [16, 'a tenth'],
    [17, '17 semitones'],
  ])('a span of %i semitones is %s', (semitones, words) =>
    expect(spanWords(semitones)).toBe(words),
  );

  it('of a hit that is too much: where it stands and why', () => {
    const at = { startTick: 720, at: 720 } as const;
    const repeat = { ...at, kind: 'repeat', value: 9.333, limit: 7 } as const;
    const leap = { ...at, kind: 'leap', value: 120, limit: 60 } as const;
    const p = pattern('4/4', { left: 'RRRRRRRR' });
    expect(strainWords(p, repeat)).toBe('2 and: one key 9.3 times a second, over 7.0');
    expect(strainWords(p, leap)).toBe('2 and: a leap like an octave in 0.10 s, under 0.20');
  });
});
