import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import { formatDegreeNumber } from '../../../core/harmony/degreeNumbers.ts';
import type { Key } from '../../../core/harmony/key.ts';
import { formatNumeral, numeralOf } from '../../../core/harmony/numerals.ts';
import { scaleChordOf } from '../../../core/harmony/scaleDegree.ts';
import { unreachable } from '../../../core/result.ts';
import type { ChordNaming } from '../../../core/song/chart.ts';
import type { ChordSlot } from '../../../core/song/song.ts';
import type { ChordNamingChoice } from '../tool/viewState.ts';

/** How a chosen naming writes a chord in a key. */
export function chordNamingIn(choice: ChordNamingChoice, key: Key): ChordNaming {
  switch (choice) {
    case 'symbols':
      return formatChordSymbol;
    case 'numerals':
      return (chord) => formatNumeral(numeralOf(chord, key));
    case 'numbers':
      return (chord) => formatDegreeNumber(scaleChordOf(chord, key));
    default:
      return unreachable(choice);
  }
}

/** The naming that is printed small under the chosen one: numerals under symbols, symbols under the others. */
export const NAMING_BELOW: Readonly<Record<ChordNamingChoice, ChordNamingChoice>> = {
  symbols: 'numerals',
  numerals: 'symbols',
  numbers: 'symbols',
};

/** A slot's chord as printed; N.C. where no chord is played. */
export function slotName({ chord }: Pick<ChordSlot, 'chord'>, naming: ChordNaming): string {
  return chord === 'no-chord' ? 'N.C.' : naming(chord);
}

const SPOKEN: Readonly<Record<string, string>> = {
  '♭': ' flat ',
  '♯': ' sharp ',
  '°': ' diminished ',
  ø: ' half-diminished ',
  'N.C.': 'no chord',
};

/** A chord's printed name with its signs as words, for those who hear it. */
export function spokenName(name: string): string {
  return (SPOKEN[name] ?? name.replace(/[♭♯°ø]/g, (sign) => SPOKEN[sign] ?? sign)).trim();
}
