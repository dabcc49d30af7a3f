import { describe, expect, it } from 'vitest';
import { readSaid, saidBy } from '../../../../src/ui/rhythm/desk/readSaid.ts';
import { saidSentence } from '../../../../src/ui/rhythm/desk/sayMessages.ts';
import {
  partOf,
  struckBy,
  targetOfKey,
  writingTargets,
} from '../../../../src/ui/rhythm/desk/targets.ts';
import { pattern, source } from '../../../support/patterns.ts';

const HANDS = pattern('4/4', { left: 'R..R....', right: '..C...C.' });
const BANDED = { ...HANDS, sources: [source(HANDS, 'kick', 'x..x....')] };

/** What is said of a text that can't be written into the pattern. */
function problem(text: string): string {
  const read = readSaid(text, BANDED);
  if (read.ok) throw new Error(`“${text}” can be read`);
  return saidSentence(read.error);
}

describe('what was said', () => {
  it.each([
    ['', 'Type the counts that sound'],
    ['1 & tow', '“tow” is no count (at character 5)'],
    ['1 2) 3', 'The bracket ) closes none that was opened (at character 4)'],
    ['1 [2) 3', 'The bracket ) closes none that was opened (at character 5)'],
    ['1 '.repeat(50_001), 'more than can be said: 100,002 characters, and 100,000 are the most'],
    ['1 (2 3', 'opened and not closed (at character 3)'],
    ['1 5', 'no count 5 here (at character 3): a bar of this meter counts to 4'],
    ['1 e trip', 'these counts together, from “e” on (at character 3)'],
    ['1 | 2 | 3', 'These are 3 bars'],
  ])('%j: %s', (text, sentence) => expect(problem(text)).toContain(sentence));

  it('may be one, two or four bars', () => {
    for (const text of ['1 &', '1 | 2', '1 | 2 | 3 | 4'])
      expect(readSaid(text, BANDED).ok).toBe(true);
  });
});

describe('what rhythms can be for', () => {
  it('is each hand, each source and each part of the band', () => {
    const keys = writingTargets(BANDED).map(({ key }) => key);
    expect(keys.slice(0, 4)).toEqual(['left', 'right', 'source kick', 'new bass']);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('falls back to a hand when a source is gone', () => {
    expect(targetOfKey(BANDED, 'source kick').target).toEqual({ kind: 'source', id: 'kick' });
    expect(targetOfKey(HANDS, 'source kick').key).toBe('left');
  });

  it('is said as it is struck now', () => {
    const said = (key: string) => saidBy(BANDED, targetOfKey(BANDED, key).target);
    expect(said('left')).toBe('1 (2) &');
    expect(said('source kick')).toBe('1 (2) &');
    expect(said('new bass')).toBe('');
    expect(struckBy(BANDED, targetOfKey(BANDED, 'right').target)).toEqual([480, 1440]);
  });

  it('knows its part of the band', () => {
    const parts = ['left', 'source kick', 'new sung'].map((key) =>
      partOf(BANDED, targetOfKey(BANDED, key).target),
    );
    expect(parts).toEqual([undefined, 'kick', 'sung']);
  });
});
