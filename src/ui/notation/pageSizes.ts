import { SPACE, type Units } from './glyphs.ts';
import { capitalHeight } from './lettering.ts';
import type { PageSize } from './pages.ts';

type Millimetres = number;

/** A4 with its margins (they stand in the style sheet too), and how far apart staff lines are printed to be read from a stand. */
const A4 = { width: 210, height: 297, margin: 14 } as const;
const STAFF_SPACE: Millimetres = 2.3;

const TITLE_GAP: Units = 40;

function units(length: Millimetres): Units {
  return (length / STAFF_SPACE) * SPACE;
}

/** The printable part of an A4 page in millimetres. */
export const PRINTABLE_MM = { width: A4.width - 2 * A4.margin, height: A4.height - 2 * A4.margin };

/** The same in drawing units, with room for a title. */
export const A4_PAGE: PageSize = {
  width: units(PRINTABLE_MM.width),
  height: units(PRINTABLE_MM.height),
  titleHeight: capitalHeight('title') + TITLE_GAP,
};
