import type { Units } from './glyphs.ts';

/** Size and weight of each kind of text on the sheet. */
export const LETTERING = {
  chord: { size: 27, weight: 'bold' },
  count: { size: 20, weight: 'bold' },
  silentCount: { size: 20, weight: 'normal' },
  words: { size: 17, weight: 'normal' },
  title: { size: 34, weight: 'bold' },
  barNumber: { size: 13, weight: 'normal' },
} as const satisfies Readonly<
  Record<string, { readonly size: Units; readonly weight: 'normal' | 'bold' }>
>;

export type Lettering = keyof typeof LETTERING;

/** Height of capitals and figures over the baseline, in ems (measured). */
const CAPITAL_EMS = 0.73;

/** Widths of Academico's bold letters in ems (measured); the plain ones are a little narrower. */
const LETTER_EMS = [
  { letters: /[mM&W]/, ems: 1 },
  { letters: /[DGNHKO]/, ems: 0.84 },
  { letters: /[ABCEPRSTUVXYΔ]/, ems: 0.78 },
  { letters: /[FLZhnu]/, ems: 0.7 },
  { letters: /[0-9abdegkopqvxyø+]/, ems: 0.61 },
  { letters: /[cfrstzJ]/, ems: 0.53 },
  { letters: /[♭♯°()]/, ems: 0.43 },
  { letters: /[ijlI./ :,-]/, ems: 0.35 },
] as const;

const OTHER_EMS = 0.8;

/** About how wide a text is, a little generous. */
export function textWidth(text: string, lettering: Lettering): Units {
  const ems = text
    .split('')
    .map((letter) => LETTER_EMS.find(({ letters }) => letters.test(letter))?.ems ?? OTHER_EMS)
    .reduce((sum, width) => sum + width, 0);
  return ems * LETTERING[lettering].size;
}

/** How far capitals and figures reach above their baseline. */
export function capitalHeight(lettering: Lettering): Units {
  return CAPITAL_EMS * LETTERING[lettering].size;
}
