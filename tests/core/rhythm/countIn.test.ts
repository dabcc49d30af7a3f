import { describe, expect, it } from 'vitest';
import { countIn } from '../../../src/core/rhythm/countIn.ts';
import { meter } from '../../support/music.ts';

const starts = (notes: readonly { startTick: number }[]) => notes.map((note) => note.startTick);

describe('the count-in', () => {
  it('ends at tick 0 and begins so many bars before', () => {
    expect(starts(countIn(meter('4/4'), 1))).toEqual([-1920, -1440, -960, -480]);
    expect(starts(countIn(meter('6/8'), 2))).toEqual([-2880, -2160, -1440, -720]);
  });

  it('accents each of its downbeats', () =>
    expect(countIn(meter('2/4'), 2).map((click) => click.keyNumber)).toEqual([76, 77, 76, 77]));

  it('has the sound of the click', () =>
    expect(countIn(meter('2/4'), 1, { sound: 'beep' }).map((click) => click.keyNumber)).toEqual([
      67, 68,
    ]));

  it('of no bars is nothing', () => expect(countIn(meter('4/4'), 0)).toEqual([]));
});

describe('the spoken count-in', () => {
  const said = (text: string, bars: number) =>
    countIn(meter(text), bars, { spoken: true })
      .map(({ says, startTick }) => `${says}@${startTick}`)
      .join(' ');

  // Half the time first where four beats are counted over two bars (common practice).
  it.each([
    ['4/4', 1, '1@-1920 2@-1440 3@-960 4@-480'],
    ['4/4', 2, '1@-3840 2@-2880 1@-1920 2@-1440 3@-960 4@-480'],
    ['12/8', 2, '1@-5760 2@-4320 1@-2880 2@-2160 3@-1440 4@-720'],
    ['3/4', 2, '1@-2880 2@-2400 3@-1920 1@-1440 2@-960 3@-480'],
    ['6/8', 1, '1@-1440 2@-720'],
    ['7/8', 1, '1@-1680 2@-1200 3@-720'],
    ['5/4', 1, '1@-2400 2@-1920 3@-1440 4@-960 5@-480'],
  ])('in %s over %i bars is %s', (text, bars, words) => expect(said(text, bars)).toBe(words));

  it('keeps the click of every word, for what has no voice, and lasts as long as the beat', () => {
    const words = countIn(meter('6/8'), 1, { spoken: true });
    expect(words.map((word) => word.keyNumber)).toEqual([76, 77]);
    expect(words.map((word) => word.durationTicks)).toEqual([720, 720]);
  });

  it('clicks beyond the last number that is spoken', () =>
    expect(countIn(meter('13/4'), 1, { spoken: true }).map(({ says }) => says)).toEqual([
      1,
      2,
      3,
      4,
      5,
      6,
      7,
      8,
      9,
      10,
      11,
      12,
      undefined,
    ]));
});
