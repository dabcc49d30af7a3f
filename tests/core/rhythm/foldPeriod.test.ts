import { describe, expect, it } from 'vitest';
import { periodEvidence, shortestPeriod } from '../../../src/core/rhythm/foldPeriod.ts';
import { barsHeard, placeStrokes } from '../../../src/core/rhythm/foldPlacing.ts';
import { meter } from '../../support/music.ts';

/** Histories of steps as text, one sign a bar. */
function histories(...lines: readonly string[]): boolean[][] {
  return lines.map((line) => line.split('').map((sign) => sign === 'x'));
}

function period(...lines: readonly string[]): number {
  return shortestPeriod(periodEvidence(histories(...lines), lines[0]!.length));
}

describe('the period', () => {
  const steady = ['xxxxxxxxxxxxxxxx', 'xxxxxxxxxxxxxxxx', 'xxxxxxxx.xxxxxxx'];

  it('is one bar where every step does the same in all bars', () => {
    expect(period(...steady)).toBe(1);
  });

  it('is two bars where a step is played in every other bar', () => {
    expect(period(...steady, '.x.x.x.x.x.x.x.x')).toBe(2);
  });

  it('is four bars where several steps come every fourth bar', () => {
    const fourth = '...x...x...x...x';
    expect(period(...steady, fourth, fourth, fourth)).toBe(4);
  });

  it('is not lengthened by one crash at the start of every phrase', () => {
    expect(period(...steady, 'x...x...x...x...')).toBe(1);
  });

  it('is one bar where a step comes half of the time without any order', () => {
    expect(period(...steady, 'xx.x..xx.x..xx..')).toBe(1);
  });

  it('is looked for only where it returns', () => {
    expect(periodEvidence(histories('x.x'), 3).map(({ bars }) => bars)).toEqual([1]);
    expect(periodEvidence(histories('x.x.'), 4).map(({ bars }) => bars)).toEqual([1, 2]);
  });

  it('is one bar where nothing is played', () => {
    expect(shortestPeriod(periodEvidence([], 16))).toBe(1);
  });
});

describe('placing', () => {
  it('places strokes between beats that are not even', () => {
    const beats = [0, 0.5, 1.1, 1.6, 2.1];
    const strokes = [0.25, 0.8, 1.6].map((at) => ({ at, strength: 1 }));
    const ticks = placeStrokes(strokes, beats, meter('4/4')).map(({ tick }) => tick);
    [240, 720, 1440].forEach((tick, i) => expect(ticks[i]).toBeCloseTo(tick, 9));
  });

  it('goes on evenly before the first beat and after the last', () => {
    const strokes = [-0.25, 2.5].map((at) => ({ at, strength: 1 }));
    const ticks = placeStrokes(strokes, [0, 0.5, 1, 1.5, 2], meter('4/4')).map((s) => s.tick);
    [-240, 2400].forEach((tick, i) => expect(ticks[i]).toBeCloseTo(tick, 9));
  });

  it('gives lengths in ticks and beats of 7/8 their own length', () => {
    const strokes = [{ at: 2.5, length: 0.5, strength: 1 }];
    const [placed] = placeStrokes(strokes, [0, 1, 2, 3], meter('7/8'));
    expect(placed).toMatchObject({ tick: 960 + 360, lengthTicks: 360 });
  });

  it.each([
    ['4/4', 9, 2],
    ['4/4', 8, 2],
    ['4/4', 7, 1],
    ['4/4', 4, 1],
    ['4/4', 1, 0],
    ['6/8', 5, 2],
    ['3/8', 4, 3],
  ])('counts the bars of %s in %i beats as %i', (text, count, bars) => {
    const beats = Array.from({ length: count }, (_, i) => i);
    expect(barsHeard(beats, meter(text))).toBe(bars);
  });
});
