import { describe, expect, it } from 'vitest';
import { expectedHits, type InputSees } from '../../../src/core/practice/expectedHits.ts';
import type { Part } from '../../../src/core/rhythm/note.ts';
import { timedNote } from '../../support/sound.ts';

function note(part: Part, startSec: number, keyNumber = 60, patternTick = 0) {
  return timedNote(part, startSec, { keyNumber, patternTick });
}

/** A chord of three over a bass note, then the right hand 20 ms before the left, then the right alone. */
const NOTES = [
  note('right', 0, 67),
  note('right', 0, 60),
  note('left', 0, 36),
  note('right', 0, 64),
  note('right', 0.5, 64, 480),
  note('left', 0.52, 43, 500),
  note('right', 1, 72, 960),
  note('click', 0.25, 76),
  note('bass', 0.75, 40),
];

function lines(sees: InputSees): string[] {
  return expectedHits(NOTES, sees).map(
    ({ atSec, hand, keys, patternTick }) => `${atSec} ${hand} ${patternTick} ${keys.join(',')}`,
  );
}

describe('what is expected of the player', () => {
  it('with a keyboard: each hand’s chord as one hit with its keys, no other part', () =>
    expect(lines('keys')).toEqual([
      '0 left 0 36',
      '0 right 0 60,64,67',
      '0.5 right 480 64',
      '0.52 left 500 43',
      '1 right 960 72',
    ]));

  it('with two keys or pads: the same without keys', () =>
    expect(lines('hands')).toEqual([
      '0 left 0 ',
      '0 right 0 ',
      '0.5 right 480 ',
      '0.52 left 500 ',
      '1 right 960 ',
    ]));

  it('with a microphone: hits of both hands that sound as one are one, at the first', () =>
    expect(lines('onsets')).toEqual(['0 both 0 ', '0.5 both 480 ', '1 right 960 ']));

  it('nothing without notes for the hands', () =>
    expect(expectedHits([note('click', 0)], 'keys')).toEqual([]));
});

describe('the gap that a hit’s tolerance follows', () => {
  it('is the way to the nearest hit that is not struck together with it', () => {
    const gaps = expectedHits(NOTES, 'keys').map((hit) => hit.gapSec);
    const expected = [0.5, 0.5, 0.5, 0.48, 0.48];
    gaps.forEach((gap, i) => expect(gap).toBeCloseTo(expected[i]!, 9));
  });

  it('is at most the beat, which is felt between the hits', () =>
    expect(expectedHits(NOTES, 'keys', 0.4).map((hit) => hit.gapSec)).toEqual([
      0.4, 0.4, 0.4, 0.4, 0.4,
    ]));

  it('of a lonely hit is a second', () =>
    expect(expectedHits([note('left', 3)], 'keys')).toMatchObject([{ gapSec: 1 }]));
});
