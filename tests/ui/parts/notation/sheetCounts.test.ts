import { describe, expect, it } from 'vitest';
import type { Division } from '../../../../src/core/rhythm/pattern.ts';
import { sheetCounts } from '../../../../src/ui/parts/notation/sheetCounts.ts';
import { pattern } from '../../../support/patterns.ts';
import { notationOf } from '../../../support/sheets.ts';

/** The counts of a bar in which the right hand plays, silent ones in brackets. */
function counts(meterText: string, right: string, divisions?: readonly Division[]): string {
  const p = pattern(meterText, { right }, divisions ? { divisions } : {});
  return sheetCounts(notationOf(p, '| C |').sheet.bars[0]!)
    .map(({ text, silent }) => (silent ? `(${text})` : text))
    .join(' ');
}

describe('counts under a sheet', () => {
  // Syllables: reference.md 3.1, common practice.
  it.each([
    ['4/4', 'C---', '1 (2) (3) (4)'],
    ['4/4', '.C.C.C.C', '(1) & (2) & (3) & (4) &'],
    ['4/4', 'CCCCC.CCC.......', '1 e & a 2 & a 3 (4)'],
    ['3/4', 'C.CC.C', '1 2 & (3) &'],
    ['6/8', 'C.C.CC', '1 a (2) & a'],
    ['6/8', 'C....C', '1 (2) a'],
  ])('%s %s: %s', (meterText, right, text) => expect(counts(meterText, right)).toBe(text));

  it('a beat in three is counted as a triplet', () =>
    expect(counts('4/4', 'CCCC.C.C', [3, 2, 2, 1])).toBe('1 & a 2 3 4'));

  it('a note that is tied over a beat is not struck there', () =>
    expect(counts('4/4', '.C--....')).toBe('(1) & (2) (3) (4)'));
});
