import { ok, type Result } from '../result.ts';
import { type Chord, writableChord } from './chord.ts';
import { type ChordSymbolError, parseChordSymbol } from './chordSymbol.ts';
import { parseDegreeNumber } from './degreeNumbers.ts';
import type { Key } from './key.ts';
import { chordOfNumeral, type NumeralError, parseNumeral } from './numerals.ts';
import { chordInKey } from './scaleDegree.ts';

export type ChordTextError = ChordSymbolError | NumeralError;

const IS_NUMERAL = /^[♭b♯#]*[IViv]/;
const IS_NUMBER = /^[♭b♯#]*\d/;

/**
 * Reads one chord in any of the three ways to name it: a symbol (`Am7`), a Roman numeral (`vi7`) or a
 * scale-degree number (`6-7`), the latter two in `key`. Without a key only symbols are read. The
 * first characters tell which it is: a capital A to G, an I or V, a figure.
 */
export function parseChordText(text: string, key?: Key): Result<Chord, ChordTextError> {
  if (key && IS_NUMERAL.test(text)) {
    const numeral = parseNumeral(text);
    return numeral.ok ? ok(writableChord(chordOfNumeral(numeral.value, key))) : numeral;
  }
  if (key && IS_NUMBER.test(text)) {
    const number = parseDegreeNumber(text);
    return number.ok ? ok(writableChord(chordInKey(number.value, key))) : number;
  }
  return parseChordSymbol(text);
}
