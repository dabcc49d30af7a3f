import { expect, it } from 'vitest';
import { analyse } from '../../../../src/core/harmony/analysis.ts';
import { printedNumerals, roleWords } from '../../../../src/ui/parts/song/chordRoleWords.ts';
import { chord, majorKey } from '../../../support/music.ts';

const analysed = (chords: string, tonic = 'D') =>
  analyse(
    chords.split(' ').map((symbol) => (symbol === 'N.C.' ? 'no-chord' : chord(symbol))),
    majorKey(tonic),
  );

it('prints the numerals of a chart, none where no chord is played', () => {
  const chords = analysed('D Bm7 N.C. E7 A');
  expect(printedNumerals(chords, majorKey('D'))).toEqual(['I', 'vi7', '', 'V7/V', 'V']);
});

it('names the key that the chords move into, once', () => {
  const chords = analysed('C F G C A7 D G D', 'C');
  expect(printedNumerals(chords, majorKey('C'))).toEqual('I,IV,V,I,D: V7,I,IV,I'.split(','));
});

it('says what a chord does', () => {
  const [first, , applied] = analysed('D G E7 A D');
  expect(roleWords(first!)).toBe('I of D major');
  expect(roleWords(applied!)).toBe('V7/V, which leads to A');
  expect(roleWords(analysed('D Gm6 D')[1]!)).toBe('iv6, borrowed from D minor');
});
