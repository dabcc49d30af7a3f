import { err, ok, type Result } from '../result.ts';
import type { Chord } from './chord.ts';
import { formatChordSuffix, matchAt, readChordSuffix } from './chordSuffix.ts';
import { formatPitchClass, pitchClassOf } from './pitch.ts';

/** Why a text is no chord symbol; `at` is the first character that was not understood (0-based, in `text`). */
export type ChordSymbolError = {
  readonly kind: 'no-root' | 'unknown-quality' | 'unknown-bass';
  readonly text: string;
  readonly at: number;
};

const ROOT = /[A-G](?:bb|♭♭|𝄫|b|♭|##|♯♯|𝄪|x|#|♯)?/;

/**
 * Reads a chord symbol: a root with ♭ b ♯ # x, a quality in any of its usual spellings (`maj7` `M7`
 * `ma7` `Δ`, `m` `mi` `min` `-`, `dim` `°`, `ø`, `+` `aug`, `sus`), figures to 13, tensions added,
 * altered or in brackets, and a bass after a slash, also where it is the root. Figures stack:
 * 13 is 9, 11 and 13 over the seventh; an altered tension replaces the plain one. `7alt` is read as
 * 7♯5♯9 (common practice). Spaces around the symbol are ignored. Where the symbol asks for a
 * combination that no quality has (`m7♯5`, `maj7sus4`), the error stands at the part that does not fit.
 */
export function parseChordSymbol(text: string): Result<Chord, ChordSymbolError> {
  const symbol = text.trimEnd();
  const start = symbol.length - symbol.trimStart().length;
  const rootText = matchAt(ROOT, symbol, start) ?? '';
  const root = pitchClassOf(rootText);
  if (!root) return err({ kind: 'no-root', text, at: start });
  const read = readChordSuffix(symbol, start + rootText.length);
  if (!read.ok) return err({ kind: 'unknown-quality', text, at: read.error });
  const { suffix, end } = read.value;
  if (end === symbol.length) return ok({ root, ...suffix });
  const bass = pitchClassOf(symbol.slice(end + 1));
  if (!bass) return err({ kind: 'unknown-bass', text, at: end + 1 });
  return ok({ root, ...suffix, bass });
}

/**
 * The chord as printed, in one set of spellings: `Fmaj7` `Dm7` `B♭m7♭5` `Cdim7` `C+` `G7sus4` `C6/9`
 * `Cadd9` `CmMaj7` `C7♯5` `C13♯11`, with the bass after a slash. `parseChordSymbol` gives the same
 * chord back for every root with up to two signs.
 */
export function formatChordSymbol(chord: Chord): string {
  const bass = chord.bass ? `/${formatPitchClass(chord.bass)}` : '';
  return formatPitchClass(chord.root) + formatChordSuffix(chord) + bass;
}
