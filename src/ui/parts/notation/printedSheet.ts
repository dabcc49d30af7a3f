import { SPACE, type Units } from './glyphs.ts';
import { capitalHeight } from './lettering.ts';
import type { Notation } from './notation.ts';
import { layoutPages, type PageSize, type SheetPage } from './pages.ts';
import { sheetSystems } from './systems.ts';

export type Millimetres = number;

/** The printable part of an A4 page, 14 mm inside its edges (the style sheet has the same margins). */
export const PRINTABLE_MM = { width: 210 - 2 * 14, height: 297 - 2 * 14 } as const;

/**
 * Distances of two staff lines on paper, the largest first. The last is a little over that of printed
 * piano music (1.75 mm), so that it is read from a stand.
 */
const STAFF_SPACES_MM: readonly Millimetres[] = [3.4, 3, 2.7, 2.4, 2.2];

const TITLE_GAP: Units = 40;

/** Room for the page number under the music. */
const FOOT: Units = 30;

/** The music's part of an A4 page in drawing units when staff lines are so far apart; the page number stands under it. */
export function a4Page(staffSpace: Millimetres): PageSize {
  const units = (length: Millimetres): Units => (length / staffSpace) * SPACE;
  return {
    width: units(PRINTABLE_MM.width),
    height: units(PRINTABLE_MM.height) - FOOT,
    titleHeight: capitalHeight('title') + TITLE_GAP,
  };
}

/** Pages of A4 and their size in drawing units. */
export type PrintedSheet = {
  readonly page: PageSize;
  readonly pages: readonly SheetPage[];
  /** Height of a whole page, at whose bottom its number stands. */
  readonly wholeHeight: Units;
};

/** The notation on A4 pages: as large as it fits on one page, otherwise on as many as it takes at the smallest size. */
export function printedSheet(notation: Notation): PrintedSheet {
  let printed: PrintedSheet | undefined;
  for (const staffSpace of STAFF_SPACES_MM) {
    const page = a4Page(staffSpace);
    const systems = sheetSystems(notation, page.width);
    printed = { page, pages: layoutPages(systems, page), wholeHeight: page.height + FOOT };
    const fitsAcross = systems.every(({ reach }) => reach <= page.width);
    if (printed.pages.length <= 1 && fitsAcross) break;
  }
  return printed!;
}
