import { expect, it } from 'vitest';
import { pictureOf } from '../../../../src/ui/parts/picture/rhythmPicture.ts';
import { pattern } from '../../../support/patterns.ts';
import { shelf } from '../../../support/shelf.ts';

it('counts every beat, and between them only what is struck', () => {
  const picture = pictureOf(pattern('4/4', { left: 'R.....5.', right: '...C....' }), 400);
  expect(picture.counts.map(({ text }) => text)).toEqual(['1', '2', '&', '3', '4']);
});

it('has dots for syllables where there is no room for them', () => {
  const { counts } = pictureOf(pattern('2/4', { right: '1.2..3.4' }), 100);
  expect(counts.map(({ text }) => text)).toEqual(['1', '·', '2', '·', '·']);
});

it('draws higher tones higher, and the right hand over the left', () => {
  const { marks, spine } = pictureOf(pattern('4/4', { left: 'R.8.', right: '1.3.' }), 400);
  const [low, high] = marks.filter(({ hand }) => hand === 'right');
  expect(high!.bottom).toBeLessThan(low!.bottom);
  expect(low!.bottom).toBeLessThanOrEqual(spine.top);
  const [root, octave] = marks.filter(({ hand }) => hand === 'left');
  expect(octave!.top).toBeLessThan(root!.top);
  expect(octave!.top).toBeGreaterThanOrEqual(spine.bottom);
});

it('lets held hits sound on to their end and short ones not', () => {
  const held = pattern('4/4', { right: 'C---C---' });
  const short = { ...held, right: held.right.map((hit) => ({ ...hit, held: false })) };
  const ends = (p: typeof held) => pictureOf(p, 400).marks.map(({ x, end }) => end - x);
  expect(ends(held).every((length) => length > 180)).toBe(true);
  expect(ends(short)).toEqual([0, 0]);
});

it.each(shelf())('keeps everything of $pattern.name inside its frame', ({ pattern: p }) => {
  const { marks, barLines, height } = pictureOf(p, 320);
  expect(barLines).toHaveLength(p.bars + 1);
  expect(marks).toHaveLength(p.left.length + p.right.length);
  for (const { x, end, top, bottom } of marks) {
    expect(x).toBeGreaterThanOrEqual(0);
    expect(end).toBeLessThanOrEqual(320);
    expect(top).toBeGreaterThanOrEqual(0);
    expect(bottom).toBeLessThanOrEqual(height);
  }
});
