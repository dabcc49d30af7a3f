/** The smallest and the usual size of a text, in CSS pixels. */
export type TypeSizes = { readonly smallest: number; readonly usual: number };

/** Widths of letters in the serif, in ems; those not named are as `OTHER_EMS` (measured, a little generous). */
const LETTER_EMS = [
  { letters: /[mM]/, ems: 0.9 },
  { letters: /[A-HN]/, ems: 0.68 },
  { letters: /[IVX]/, ems: 0.55 },
  { letters: /[ijl.()/ -]/, ems: 0.34 },
  { letters: /[♭♯]/, ems: 0.4 },
] as const;

const OTHER_EMS = 0.53;

/** About how wide a text is in the serif, in ems. */
export function textEms(text: string): number {
  return text
    .split('')
    .map((letter) => LETTER_EMS.find(({ letters }) => letters.test(letter)))
    .reduce((total, found) => total + (found?.ems ?? OTHER_EMS), 0);
}

/** The size at which a text fits a width (CSS pixels), between its smallest and its usual one. */
export function fittingPx(text: string, widthPx: number, { smallest, usual }: TypeSizes): number {
  const fitting = widthPx / Math.max(textEms(text), OTHER_EMS);
  return Math.min(usual, Math.max(smallest, fitting));
}
