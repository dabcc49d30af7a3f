import { err, ok, type Result } from '../result.ts';
import type { Chord, ChordQuality } from './chord.ts';
import { type ChordSuffix, formatChordSuffix, matchAt, readChordSuffix } from './chordSuffix.ts';
import type { Key, Mode } from './key.ts';
import {
  chordInKey,
  DEGREES,
  type Degree,
  type DegreeStep,
  pitchClassAt,
  type ScaleChord,
  scaleChordOf,
} from './scaleDegree.ts';

/**
 * A chord as a Roman numeral names it: a step and a quality, and where it is borrowed from the key of
 * another step, `of` that step (V7/ii is the dominant of the minor key on the second step).
 */
export type Numeral = ScaleChord & { readonly of?: NumeralTarget };

/** The step whose key an applied chord belongs to. */
export type NumeralTarget = DegreeStep & { readonly mode: Mode };

/** Why a text is no numeral or number; `at` is the first character that was not understood (0-based). */
export type NumeralError = {
  readonly kind: 'no-degree' | 'unknown-quality' | 'unknown-target';
  readonly text: string;
  readonly at: number;
};

const ROMANS = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'] as const;

const ROMAN = /VII|VI|IV|V|III|II|I|vii|vi|iv|v|iii|ii|i/;
const SIGNS = /[♭b]+|[♯#]+/;

/** Qualities written in small numerals: those with a minor third. */
const SMALL: readonly ChordQuality[] = [
  'minor',
  'diminished',
  'minor-sixth',
  'minor-seventh',
  'minor-major-seventh',
  'diminished-seventh',
  'half-diminished-seventh',
];

/** Qualities without a third, which small and large numerals name alike. */
const WITHOUT_THIRD: readonly ChordQuality[] = [
  'power',
  'suspended-second',
  'suspended-fourth',
  'dominant-seventh-suspended-fourth',
];

/** Signs before a step: how far they alter it, and where they end. */
export function readSigns(
  text: string,
  at: number,
): { readonly alteration: number; readonly end: number } {
  const signs = matchAt(SIGNS, text, at) ?? '';
  const isFlat = signs.startsWith('♭') || signs.startsWith('b');
  return { alteration: isFlat ? -signs.length : signs.length, end: at + signs.length };
}

/** A step as it is printed: `♭7`, `♯4`, `5`. */
export function formatStep({ degree, alteration }: DegreeStep): string {
  return formatSigns(alteration) + degree;
}

function formatSigns(alteration: number): string {
  return (alteration < 0 ? '♭' : '♯').repeat(Math.abs(alteration));
}

/** Reads the step of a bass, which reaches to the end of the text. */
export function readBassStep(text: string, at: number): DegreeStep | undefined {
  const { alteration, end } = readSigns(text, at);
  const degree = DEGREES.find((d) => text.slice(end) === String(d));
  return degree && { degree, alteration };
}

type RomanStep = DegreeStep & { readonly isSmall: boolean; readonly end: number };

function readRoman(text: string, at: number): RomanStep | undefined {
  const { alteration, end } = readSigns(text, at);
  const roman = matchAt(ROMAN, text, end);
  const degree = roman && ((ROMANS.findIndex((r) => r === roman.toUpperCase()) + 1) as Degree);
  if (!degree) return undefined;
  return { degree, alteration, isSmall: roman === roman.toLowerCase(), end: end + roman.length };
}

type ReadSuffix = ReturnType<typeof readChordSuffix>;

/** A small numeral says minor by itself; what follows may say diminished, or leave the third out. */
function readSmallSuffix(text: string, from: number): ReadSuffix {
  const implied = readChordSuffix(`${text.slice(0, from)}m${text.slice(from)}`, from);
  if (implied.ok) return ok({ ...implied.value, end: implied.value.end - 1 });
  const spelled = readChordSuffix(text, from);
  if (!spelled.ok) return spelled;
  const { quality } = spelled.value.suffix;
  return SMALL.includes(quality) || WITHOUT_THIRD.includes(quality)
    ? spelled
    : err(Math.max(from, implied.error - 1));
}

function readTarget(
  text: string,
  at: number,
): { readonly of?: NumeralTarget; readonly end: number } {
  const roman = text[at] === '/' ? readRoman(text, at + 1) : undefined;
  if (!roman) return { end: at };
  const { degree, alteration, isSmall, end } = roman;
  return { of: { degree, alteration, mode: isSmall ? 'minor' : 'major' }, end };
}

/**
 * Reads a Roman numeral: signs, a numeral (small for a minor third), the rest as in a chord symbol
 * (`ii7` `V7♭9` `viiø7` `♯iv°7` `IVmaj7`), then a step that the chord is applied to (`V7/vi`) and a
 * bass by its step (`I/3`, `V7/V/♯4`), each after a slash.
 */
export function parseNumeral(text: string): Result<Numeral, NumeralError> {
  const roman = readRoman(text, 0);
  if (!roman) return err({ kind: 'no-degree', text, at: readSigns(text, 0).end });
  const { degree, alteration, isSmall, end: from } = roman;
  const read = isSmall ? readSmallSuffix(text, from) : readChordSuffix(text, from);
  if (!read.ok) return err({ kind: 'unknown-quality', text, at: read.error });
  const { of, end } = readTarget(text, read.value.end);
  const named = { degree, alteration, ...read.value.suffix, ...(of ? { of } : {}) };
  if (end === text.length) return ok(named);
  const bass = text[end] === '/' ? readBassStep(text, end + 1) : undefined;
  if (!bass) return err({ kind: 'unknown-target', text, at: text[end] === '/' ? end + 1 : end });
  return ok({ ...named, bass });
}

/** A suffix as it follows a numeral or number: `°` and `ø` for diminished, `minor` in place of the m. */
export function formatScaleSuffix(suffix: ChordSuffix, minor: string): string {
  return formatChordSuffix(suffix)
    .replace(/^dim/, '°')
    .replace(/^m(\d+)♭5/, 'ø$1')
    .replace(/^m(?!aj)/, minor);
}

function formatRoman(degree: Degree, isSmall: boolean): string {
  const roman = ROMANS[degree - 1]!;
  return isSmall ? roman.toLowerCase() : roman;
}

/** The numeral as printed: `ii7`, `V7/vi`, `♭VII`, `viiø7`, `I/3`; `parseNumeral` reads it back. */
export function formatNumeral(numeral: Numeral): string {
  const { degree, alteration, quality, of, bass } = numeral;
  const roman = formatRoman(degree, SMALL.includes(quality));
  const target = of
    ? `/${formatSigns(of.alteration)}${formatRoman(of.degree, of.mode === 'minor')}`
    : '';
  const low = bass ? `/${formatStep(bass)}` : '';
  return formatSigns(alteration) + roman + formatScaleSuffix(numeral, '') + target + low;
}

/** The key whose tonic is the step that a chord is applied to. */
export function targetKey(target: NumeralTarget, key: Key): Key {
  return { tonic: pitchClassAt(target, key), mode: target.mode };
}

/** The chord that a numeral means in a key: V7/ii in C major is A7. A bass counts in the key itself. */
export function chordOfNumeral({ of, bass, ...numeral }: Numeral, key: Key): Chord {
  const chord = chordInKey(numeral, of ? targetKey(of, key) : key);
  return bass ? { ...chord, bass: pitchClassAt(bass, key) } : chord;
}

/** A chord as a numeral in its key, or, with `of`, in the key of that step. The inverse of `chordOfNumeral`. */
export function numeralOf(chord: Chord, key: Key, of?: NumeralTarget): Numeral {
  const plain = scaleChordOf(chord, key);
  if (!of) return plain;
  const { root, quality, tensions } = chord;
  const applied = scaleChordOf({ root, quality, tensions }, targetKey(of, key));
  return { ...applied, of, ...(plain.bass ? { bass: plain.bass } : {}) };
}
