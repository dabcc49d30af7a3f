import { describe, expect, it } from 'vitest';
import { COUNT_WORDS, wordAheadSec } from '../../src/audio/countWords.ts';
import { START_DELAY_SEC } from '../../src/audio/player.ts';
import { soundOfNote } from '../../src/audio/soundOfNote.ts';
import { countIn, LAST_SPOKEN } from '../../src/core/rhythm/countIn.ts';
import { meter } from '../support/music.ts';

const ALL = COUNT_WORDS.map((_, i) => i + 1);

describe('the spoken numbers', () => {
  it('are as many as a count-in says', () => expect(COUNT_WORDS).toHaveLength(LAST_SPOKEN));

  // Marcus 1981 (docs/sources.md#perceptual-centres): 0.65 of the consonants and 0.25 of the rest.
  it('lie as far apart from their vowels as the rule says', () => {
    const six = wordAheadSec(6) - wordAheadSec(1);
    expect(six).toBeCloseTo(0.65 * (0.107 - 0.065) + 0.25 * (0.353 - 0.26), 6);
  });

  it('come with their vowels on the whole, none further than 40 ms from it', () => {
    const apart = COUNT_WORDS.map(({ vowelSec }, i) => wordAheadSec(i + 1) - vowelSec);
    expect(apart.reduce((sum, sec) => sum + sec, 0)).toBeCloseTo(0, 6);
    expect(Math.max(...apart.map(Math.abs))).toBeLessThan(0.04);
  });

  // Morton, Marcus and Frankish: by their beginnings, “eight” comes too soon and “six” too late.
  it('begin later before the beat where they begin with a vowel', () => {
    expect(wordAheadSec(8)).toBe(Math.min(...ALL.map(wordAheadSec)));
    expect(wordAheadSec(6)).toBeGreaterThan(wordAheadSec(2) + 0.04);
  });

  it('begin with “one”, which the player can begin in time', () =>
    expect(wordAheadSec(1)).toBeLessThan(START_DELAY_SEC));

  it('are no sound of their own where nothing is said', () =>
    expect(wordAheadSec(undefined)).toBe(0));

  it('cut each other short, and go into the bus of the click', () => {
    const sounds = countIn(meter('4/4'), 1, { spoken: true }).map(soundOfNote);
    expect(sounds.map(({ id }) => id)).toEqual([
      'count/one',
      'count/two',
      'count/three',
      'count/four',
    ]);
    expect(sounds.every(({ bus, dampGroup }) => bus === 'click' && dampGroup === 'count')).toBe(
      true,
    );
  });
});
