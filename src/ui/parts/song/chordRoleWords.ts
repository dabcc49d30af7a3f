import type { AnalysedChord } from '../../../core/harmony/analysis.ts';
import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import { type Key, parallelKey } from '../../../core/harmony/key.ts';
import { targetTriad } from '../../../core/harmony/keyChords.ts';
import { formatNumeral, type Numeral } from '../../../core/harmony/numerals.ts';
import { formatPitchClass, samePitchClass } from '../../../core/harmony/pitch.ts';
import { unreachable } from '../../../core/result.ts';

/** A key in words: “E♭ major”. */
export function keyName({ tonic, mode }: Key): string {
  return `${formatPitchClass(tonic)} ${mode}`;
}

function sameKey(a: Key, b: Key): boolean {
  return a.mode === b.mode && samePitchClass(a.tonic, b.tonic);
}

/**
 * The numerals of a chart as printed under its chords, N.C. left empty; where the chords move into
 * another key, that key stands before the first numeral in it (`A: V7`).
 */
export function printedNumerals(
  chords: ReadonlyArray<AnalysedChord | undefined>,
  songKey: Key,
): string[] {
  let key = songKey;
  return chords.map((chord) => {
    if (!chord) return '';
    const numeral = formatNumeral(chord.numeral);
    if (sameKey(chord.key, key)) return numeral;
    key = chord.key;
    return `${formatPitchClass(key.tonic)}${key.mode === 'minor' ? 'm' : ''}: ${numeral}`;
  });
}

function targetName({ of }: Numeral, key: Key): string {
  return of ? formatChordSymbol(targetTriad(of, key)) : formatPitchClass(key.tonic);
}

/** What a chord does where it stands, as the rest of a sentence that begins with its name. */
export function roleWords({ role, numeral, key }: AnalysedChord): string {
  const name = formatNumeral(numeral);
  switch (role) {
    case 'diatonic':
      return `${name} of ${keyName(key)}`;
    case 'blues':
      return `${name}, a seventh chord as the blues has it`;
    case 'altered-dominant':
      return `${name}, the dominant with an altered fifth`;
    case 'applied-dominant':
      return `${name}, which leads to ${targetName(numeral, key)}`;
    case 'applied-second':
      return `${name}, the second before the dominant of ${targetName(numeral, key)}`;
    case 'tritone-substitute':
      return `${name}, a tritone substitute that falls to ${targetName(numeral, key)}`;
    case 'borrowed':
      return `${name}, borrowed from ${keyName(parallelKey(key))}`;
    case 'neapolitan':
      return `${name}, the major chord on the lowered second`;
    case 'passing-diminished':
      return `${name}, a diminished chord in passing`;
    case 'common-tone-diminished':
      return `${name}, a diminished chord that keeps a note`;
    case 'unexplained':
      return `${name}, outside ${keyName(key)}`;
    default:
      return unreachable(role);
  }
}
