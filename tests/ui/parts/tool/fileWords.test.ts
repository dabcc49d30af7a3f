import { expect, it } from 'vitest';
import { decodePattern } from '../../../../src/formats/patternFile.ts';
import { expectedWords, foundWords } from '../../../../src/ui/parts/tool/fileWords.ts';
import { patternFileSentence } from '../../../../src/ui/rhythm/shelf/patternFileMessages.ts';
import { errorOf } from '../../../support/music.ts';

it.each([
  ['>=1', '1 or more'],
  ['<=4', '4 or less'],
  ['>0', 'more than 0'],
  ['!0', 'something that is not empty'],
  ['string', 'a text'],
  ['Invalid integer: Received 0.5', 'a whole number'],
  ['("left" | "right")', '"left" or "right"'],
  ['groups that add up to the beats', 'groups that add up to the beats'],
])('%s is said as “%s”', (expected, words) => expect(expectedWords(expected)).toBe(words));

it('what is not there is nothing', () => {
  expect([
    foundWords('undefined', 'string'),
    foundWords('0', '!0'),
    foundWords('0', '>=1'),
  ]).toEqual(['nothing', 'nothing', '0']);
});

const FILE = {
  version: 1,
  id: 'p',
  name: 'P',
  meter: '4/4',
  divisions: 2,
  left: [''],
  right: [''],
};

it.each([
  [{ id: '' }, 'at id there should be something that is not empty, but there is nothing.'],
  [
    { swing: { level: 'eighth', ratio: 1e308 } },
    'at swing.ratio there should be 4 or less, but there is 1e+308.',
  ],
  [{ name: undefined }, 'at name there should be'],
  [{ left: [] }, 'at left there should be 1 or more, but there is 0.'],
])('a pattern file with %j is told so without internals', (change, words) => {
  const sentence = patternFileSentence(errorOf(decodePattern({ ...FILE, ...change })));
  expect(sentence).toContain(words);
  expect(sentence).not.toMatch(/[!<>|]|undefined/);
});
