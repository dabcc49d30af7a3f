import type { NoteValue } from '../../../core/rhythm/sheet.ts';

/**
 * Lengths in drawing units, ten to the space between two staff lines. Code points are SMuFL's, sizes
 * are Leland's as measured (width and, where it counts, reach above and below the origin).
 */
export type Units = number;

export const SPACE: Units = 10;

/** Half the height of a staff: from its middle line to its outer ones. */
export const STAFF_REACH: Units = 20;

/** Stem from the head to its tip where nothing lengthens it. */
export const STEM_LENGTH: Units = 35;

export const TREBLE_CLEF = { text: '\uE050', width: 25.6 } as const;
export const BASS_CLEF = { text: '\uE062', width: 26.5 } as const;

/** Accidentals by alteration. */
export const ACCIDENTALS: Readonly<
  Record<
    number,
    { readonly text: string; readonly width: Units; readonly above: Units; readonly below: Units }
  >
> = {
  [-2]: { text: '\uE264', width: 14.8, above: 19, below: 8 },
  [-1]: { text: '\uE260', width: 8.5, above: 19, below: 8 },
  0: { text: '\uE261', width: 6.8, above: 13, below: 13 },
  1: { text: '\uE262', width: 9.8, above: 14, below: 14 },
  2: { text: '\uE263', width: 11, above: 6, below: 6 },
};

/** Width of a note head; breves do not occur. */
export function headWidth(value: NoteValue): Units {
  return value === 1 ? 14.9 : 13;
}

/** Width of the flag of an unbeamed note of this value, which reaches to the right of a stem that goes up. */
export function flagWidth(value: NoteValue): Units {
  return value >= 8 ? 11.5 : 0;
}

/** How far a rest reaches from its place: its width, above and below. */
export const REST_REACH: Readonly<
  Record<NoteValue, { readonly width: Units; readonly above: Units; readonly below: Units }>
> = {
  1: { width: 13, above: 1, below: 6 },
  2: { width: 13, above: 6, below: 1 },
  4: { width: 9.4, above: 17, below: 14 },
  8: { width: 11, above: 9, below: 11 },
  16: { width: 13.8, above: 9, below: 21 },
  32: { width: 15.6, above: 19, below: 21 },
  64: { width: 17, above: 19, below: 31 },
};

export const DOT_WIDTH: Units = 6;

/** A figure of a time signature. */
function meterFigure(digit: number): { readonly text: string; readonly width: Units } {
  return { text: String.fromCharCode(0xe080 + digit), width: digit === 1 ? 14 : 17 };
}

/** The figures of a number as they stand in a time signature, and how wide they are together. */
export function meterNumber(n: number): { readonly text: string; readonly width: Units } {
  const figures = String(n)
    .split('')
    .map((digit) => meterFigure(Number(digit)));
  return {
    text: figures.map(({ text }) => text).join(''),
    width: figures.reduce((sum, { width }) => sum + width, 0),
  };
}

/** The figure over or under a tuplet. */
export function tupletFigure(n: number): string {
  return String(n)
    .split('')
    .map((digit) => String.fromCharCode(0xe880 + Number(digit)))
    .join('');
}

export const TUPLET_FIGURE = { width: 11.2, height: 15 } as const;

/** Signs over or under a note by side: above it they stand on their origin, below they hang from it. */
export const STACCATO = { above: '\uE4A2', below: '\uE4A3', width: 3.1, height: 4 } as const;
export const ACCENT = { above: '\uE4A0', below: '\uE4A1', width: 14.4, height: 10 } as const;

/** Room for one bracket of a ghost note beside its head. */
export const GHOST_BRACKET: Units = 6;
