import { expect, it } from 'vitest';
import { parseChartBars } from '../../../src/core/song/chart.ts';
import type { PatternChoice } from '../../../src/core/song/song.ts';
import { restsIn } from '../../../src/ui/map/restWords.ts';
import { meter, section, valueOf } from '../../support/music.ts';
import { pattern } from '../../support/patterns.ts';

const FOUR = pattern('4/4', { left: 'R---' }, { id: 'four', name: 'Walk' });
const THREE = pattern('3/4', { left: 'R--' }, { id: 'three', name: 'Waltz' });
const PATTERNS = [FOUR, THREE];

/** A verse of a chart in a meter that plays `FOUR`, or what is chosen instead. */
function verse(chart: string, meterText = '4/4', choice: PatternChoice = { patternId: 'four' }) {
  const charted = valueOf(parseChartBars(chart, meter(meterText)));
  return section('verse', { meter: meter(meterText), ...charted, ...choice });
}

function said(...args: Parameters<typeof verse>): string[] {
  return restsIn(verse(...args), PATTERNS).map(({ sentence }) => sentence);
}

it('says nothing where the hands play throughout, also in bars that are shorter or longer', () => {
  expect(said('| C | G |')).toEqual([]);
  expect(said('| C | 2/4 G | 5/4 C |')).toEqual([]);
});

it('says nothing where the hands are meant to rest', () =>
  expect(said('| C | G |', '4/4', {})).toEqual([]));

it('names the bars in which the hands rest', () => {
  expect(said('| C | 6/8 G | C |')).toEqual(['“Walk” is in 4/4, so the hands rest in bar 2.']);
  expect(said('| 7/8 C | G | 6/8 G |')).toEqual([
    '“Walk” is in 4/4, so the hands rest in bars 1 and 3.',
  ]);
  expect(said('| C | G |', '3/4')).toEqual(['“Walk” is in 4/4, so the hands rest here.']);
});

it('looks at every pattern that the section changes to', () => {
  const waltzFrom = (bar: number) => ({
    patternId: 'four',
    patternChanges: [{ bar, patternId: 'three' }],
  });
  expect(said('| C | 6/8 G | C | F |', '4/4', waltzFrom(2))).toEqual([
    '“Walk” is in 4/4, so the hands rest in bar 2.',
    '“Waltz” is in 3/4, so the hands rest in bars 3 and 4.',
  ]);
  expect(said('| C | G | 3/4 C | 3/4 F |', '4/4', waltzFrom(2))).toEqual([]);
});

it('tells the bars that a version could play: those of the first meter that does not fit', () => {
  const [rest] = restsIn(verse('| C | 6/8 G | 6/8 G | C | 7/8 F | 6/8 C |'), PATTERNS);
  expect(rest).toMatchObject({ meter: meter('6/8'), bars: [1, 2, 5], endBar: 6 });
});

it('looks at what one playing plays', () => {
  const entry = { id: 'e', sectionId: 'verse', patternChanges: [{ bar: 1, patternId: 'three' }] };
  expect(restsIn(verse('| C | G |'), PATTERNS, entry).map(({ sentence }) => sentence)).toEqual([
    '“Waltz” is in 3/4, so the hands rest in bar 2.',
  ]);
});
