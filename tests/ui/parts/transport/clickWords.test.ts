import { expect, it } from 'vitest';
import {
  clickRestWords,
  RESTS,
  restsWords,
} from '../../../../src/ui/parts/transport/clickWords.ts';
import { COUNT_INS, countInWords } from '../../../../src/ui/parts/transport/countIns.ts';

it('says how many bars of how many the click is silent', () => {
  expect([undefined, ...RESTS].map(restsWords)).toEqual([
    'never',
    '1 bar in 4',
    '1 bar in 2',
    '2 bars in 4',
    '4 bars in 8',
    '3 bars in 4',
    '6 bars in 8',
  ]);
});

it('says while the click rests for how long still, and nothing while it sounds', () => {
  expect([0, 1, 3].map(clickRestWords)).toEqual([
    '',
    'click rests, last bar',
    'click rests, 3 bars',
  ]);
});

it('names every count-in by the words that choose it', () => {
  for (const { words, countIn } of COUNT_INS) expect(countInWords(countIn)).toBe(words);
});

it('is none whatever voice is kept for it', () => {
  expect(countInWords({ countInBars: 0, countInVoice: 'spoken' })).toBe('none');
});
