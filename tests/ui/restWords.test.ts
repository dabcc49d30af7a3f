import { expect, it } from 'vitest';
import { parseChartBars } from '../../src/core/song/chart.ts';
import { restSentence } from '../../src/ui/songMap/restWords.ts';
import { meter, section, valueOf } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';

const FOUR = pattern('4/4', { left: 'R---' }, { name: 'Walk' });

/** What is said of a chart in a meter that `FOUR` is to play. */
function said(chart: string, meterText = '4/4'): string | undefined {
  const charted = valueOf(parseChartBars(chart, meter(meterText)));
  return restSentence(section('verse', { meter: meter(meterText), ...charted }), FOUR);
}

it('says nothing where the hands play throughout, also in bars that are shorter or longer', () => {
  expect(said('| C | G |')).toBeUndefined();
  expect(said('| C | 2/4 G | 5/4 C |')).toBeUndefined();
});

it('names the bars in which the hands rest', () => {
  expect(said('| C | 6/8 G | C |')).toBe('“Walk” is in 4/4, so the hands rest in bar 2.');
  expect(said('| 7/8 C | G | 6/8 G |')).toContain('rest in bars 1 and 3.');
});

it('offers another pattern where none of the bars fits', () =>
  expect(said('| C | G |', '3/4')).toContain('rest here. Choose a pattern in 3/4'));
