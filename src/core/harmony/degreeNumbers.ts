import { err, ok, type Result } from '../result.ts';
import { readChordSuffix } from './chordSuffix.ts';
import {
  formatScaleSuffix,
  formatStep,
  type NumeralError,
  readBassStep,
  readSigns,
} from './numerals.ts';
import { DEGREES, type ScaleChord } from './scaleDegree.ts';

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';

function lowered(text: string): string {
  return text.replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, (figure) => String(RAISED.indexOf(figure)));
}

function raised(figures: string): string {
  return figures.replace(/\d/g, (figure) => RAISED[Number(figure)] ?? figure);
}

/**
 * Reads a chord by its scale-degree number: `1`, `6-`, `2-7`, `57` or `5⁷` (the first figure is the
 * degree), `7°`, `♭7`, `4maj7`, with the step of the bass after a slash, `5/7`. Numbers are degrees
 * of the key's scale; what follows them is written as in a chord symbol.
 */
export function parseDegreeNumber(text: string): Result<ScaleChord, NumeralError> {
  const { alteration, end: from } = readSigns(text, 0);
  const degree = DEGREES.find((d) => String(d) === text[from]);
  if (!degree) return err({ kind: 'no-degree', text, at: from });
  const read = readChordSuffix(lowered(text), from + 1);
  if (!read.ok) return err({ kind: 'unknown-quality', text, at: read.error });
  const { suffix, end } = read.value;
  if (end === text.length) return ok({ degree, alteration, ...suffix });
  const bass = readBassStep(text, end + 1);
  if (!bass) return err({ kind: 'unknown-target', text, at: end + 1 });
  return ok({ degree, alteration, ...suffix, bass });
}

/**
 * The chord by its number, as printed: `1`, `6-`, `2-7`, `5⁷`, `7°`, `♭7maj7`, `5/7`. A figure right
 * after the degree is raised, minus is minor (common practice). `parseDegreeNumber` reads it back.
 */
export function formatDegreeNumber(chord: ScaleChord): string {
  const suffix = formatScaleSuffix(chord, '-').replace(/^6\/9|^\d+/, raised);
  return formatStep(chord) + suffix + (chord.bass ? `/${formatStep(chord.bass)}` : '');
}
