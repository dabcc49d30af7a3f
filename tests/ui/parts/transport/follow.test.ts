import { expect, it } from 'vitest';
import { timelineOf } from '../../../../src/core/song/timeline.ts';
import {
  barAfter,
  barsLeftText,
  comingChordIndex,
  glanceBars,
  nextChordIndex,
  patternsInForm,
} from '../../../../src/ui/parts/transport/follow.ts';
import { section, slots, song } from '../../../support/music.ts';
import { pattern } from '../../../support/patterns.ts';

const verse = section('verse', { name: 'Verse', slots: slots('| C | C | F | G |') });
const chorus = section('chorus', { name: 'Chorus', slots: slots('| Am | F |') });
const timeline = timelineOf(song([verse, chorus], 'verse chorus verse'));

it('finds the next chord that sounds different', () => {
  expect(nextChordIndex(timeline, 0)).toBe(2);
  expect(nextChordIndex(timeline, timeline.chords.length - 1)).toBeUndefined();
});

it('counts the bars that are left of the section', () => {
  const left = (bar: number) => barsLeftText(timeline, { tick: bar * 1920, bar }, false);
  expect([0, 2, 3, 4].map(left)).toEqual(['4 bars left', '2 bars left', 'last bar', '2 bars left']);
  expect(barsLeftText(timeline, { tick: 0, bar: 0 }, true)).toBe('Count-in');
});

it('lists the bars of one playing with the changes in each', () => {
  const held = section('verse', { slots: slots('| C / F / | / / / / | G |') });
  const glance = glanceBars(timelineOf(song([chorus, held], 'chorus verse')), 1);
  expect(glance.map(({ bar, chords }) => [bar, chords.map((span) => span.slot)])).toEqual([
    [2, [0, 1]],
    [3, []],
    [4, [2]],
  ]);
});

it('shows every pattern once, with the bars from where it begins until another does', () => {
  const [slow, quick] = [pattern('4/4', { left: 'R---' }), pattern('4/4', { left: 'RRRR' })];
  const patternAt = (bar: { readonly section: number }) => [slow, quick, slow][bar.section];
  expect(patternsInForm(timeline, patternAt)).toEqual([
    { pattern: slow, bars: [0, 1, 2, 3, 6, 7, 8, 9] },
    { pattern: quick, bars: [4, 5] },
  ]);
  const changing = { ...verse, patternChanges: [{ bar: 2, patternId: 'quick' }, { bar: 3 }] };
  const parts = [slow, slow, quick, undefined];
  expect(patternsInForm(timelineOf(song([changing], 'verse')), (_, i) => parts[i])).toEqual([
    { pattern: slow, bars: [0, 1] },
    { pattern: quick, bars: [2] },
  ]);
});

it('knows the bar that comes: the next, the one jumped to, the first again, or none', () => {
  const once = { times: 1, time: 1 };
  const range = { firstBar: 4, endBar: 6 };
  expect(barAfter(timeline, 3, once)).toBe(4);
  expect(barAfter(timeline, 9, once)).toBeUndefined();
  expect(barAfter(timeline, 9, { times: 'until-stopped', time: 7 })).toBe(0);
  expect(barAfter(timeline, 5, { range, times: 2, time: 1 })).toBe(4);
  expect(barAfter(timeline, 5, { range, times: 2, time: 2 })).toBeUndefined();
  expect(barAfter(timeline, 0, { ...once, wantedBar: 5 })).toBe(5);
});

it('announces the chord that is really heard next', () => {
  // Chords by index: 0 C, 1 C, 2 F, 3 G, 4 Am, 5 F, then the verse again.
  expect(comingChordIndex(timeline, 0, 0, 1)).toBe(2);
  expect(comingChordIndex(timeline, 3, 3, 4)).toBe(4);
  expect(comingChordIndex(timeline, 0, 0, 4)).toBe(4);
  expect(comingChordIndex(timeline, 5, 5, 4)).toBe(4);
  expect(comingChordIndex(timeline, 5, 5, undefined)).toBeUndefined();
  // Jumping from the F of the verse to the F of the chorus: the chord after that.
  expect(comingChordIndex(timeline, 2, 2, 5)).toBe(6);
});
