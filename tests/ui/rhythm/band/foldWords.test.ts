import { expect, it } from 'vitest';
import type { Fold } from '../../../../src/core/rhythm/fold.ts';
import { foldWords } from '../../../../src/ui/rhythm/band/foldWords.ts';
import { meter } from '../../../support/music.ts';

const fold: Fold = {
  meter: meter('4/4'),
  bars: 2,
  divisions: [],
  swing: { level: 'eighth', ratio: 1 },
  sources: [],
  agreement: Array.from({ length: 16 }, () => 1),
  barsAgreeing: 14,
  spread: 5,
  latency: 0,
  offGrid: 0.02,
  periods: [],
};

it('tells what was found in a musician’s words', () => {
  expect(foldWords(fold)).toEqual(['2 bars of 4/4', '14 of 16 bars play it', 'straight']);
});

it('names the swing, and says when much lies between the steps', () => {
  const swung = { ...fold, bars: 1 as const, swing: { level: 'sixteenth' as const, ratio: 2 } };
  expect(foldWords({ ...swung, offGrid: 0.2 })).toEqual([
    '1 bar of 4/4',
    '14 of 16 bars play it',
    'swung sixteenths, triplet feel 2 : 1',
    '20 % of the strokes lie between the steps',
  ]);
});
