import { expect, it } from 'vitest';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import {
  barsLeftText,
  nextChordIndex,
  sectionName,
  sectionRange,
} from '../../../src/ui/practice/follow.ts';
import { section, slots, song } from '../../support/music.ts';

const verse = section('verse', { name: 'Verse', slots: slots('| C | C | F | G |') });
const chorus = section('chorus', { name: 'Chorus', slots: slots('| Am | F |') });
const timeline = timelineOf(song([verse, chorus], 'verse chorus verse'));

it('names a section by its return', () => {
  expect([0, 1, 2].map((i) => sectionName(timeline, i))).toEqual([
    'Verse',
    'Chorus',
    'Verse, 2nd time',
  ]);
});

it('finds the next chord that sounds different', () => {
  expect(nextChordIndex(timeline, 0)).toBe(2);
  expect(nextChordIndex(timeline, timeline.chords.length - 1)).toBeUndefined();
});

it('counts the bars that are left of the section', () => {
  const left = (bar: number) => barsLeftText(timeline, { tick: bar * 1920, bar }, false);
  expect([0, 2, 3, 4].map(left)).toEqual(['4 bars left', '2 bars left', 'last bar', '2 bars left']);
  expect(barsLeftText(timeline, { tick: 0, bar: 0 }, true)).toBe('Count-in');
});

it('gives the bars of one playing of a section', () => {
  expect(sectionRange(timeline, 1)).toEqual({ firstBar: 4, endBar: 6 });
  expect(sectionRange(timeline, 2)).toEqual({ firstBar: 6, endBar: 10 });
});
