import { expect, it } from 'vitest';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import {
  barsLeftText,
  glanceBars,
  nextChordIndex,
  sectionPatterns,
} from '../../../src/ui/practice/follow.ts';
import { section, slots, song } from '../../support/music.ts';
import { pattern } from '../../support/patterns.ts';

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

it('shows every pattern once, with the playings that begin with it', () => {
  const [slow, quick] = [pattern('4/4', { left: 'R---' }), pattern('4/4', { left: 'RRRR' })];
  const patternAt = (bar: { readonly section: number }) => [slow, quick, slow][bar.section];
  const shown = sectionPatterns(timeline, patternAt);
  expect(shown).toEqual([
    { pattern: slow, sections: [0, 2] },
    { pattern: quick, sections: [1] },
  ]);
});
