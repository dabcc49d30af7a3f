import { SPACE, type Units } from './glyphs.ts';
import type { Notation } from './notation.ts';
import { type PlacedSystem, stackedSystems } from './pages.ts';
import { sheetSystems } from './systems.ts';

/** Room on the screen in CSS pixels. */
export type Room = { readonly width: number; readonly height: number };

/** A sheet laid out for a screen: its systems, its size in drawing units, and how many pixels a unit is. */
export type FittedSheet = {
  readonly systems: readonly PlacedSystem[];
  readonly width: Units;
  readonly height: Units;
  readonly pxPerUnit: number;
};

/** Distances of two staff lines in CSS pixels that are tried, the largest first; smaller is not legible on a stand. */
const STAFF_SPACES_PX = [20, 18, 16, 14.5, 13, 12, 11, 10, 9] as const;

/** Above the first system and below the last. */
const MARGIN: Units = 6;

/**
 * The notation as large as it fits into a room without scrolling, staff lines at most `largestPx` apart,
 * or as small as is legible. Only where a single bar is wider than the room it gets smaller still.
 * Throws for a room without width.
 */
export function fittingSheet(
  notation: Notation,
  room: Room,
  largestPx: number = STAFF_SPACES_PX[0],
): FittedSheet {
  if (room.width <= 0) throw new Error(`no notation is ${room.width} px wide`);
  let sheet: FittedSheet | undefined;
  for (const px of STAFF_SPACES_PX.filter((size) => size <= largestPx)) {
    sheet = sheetAt(notation, room.width, px / SPACE);
    const fitsDown = sheet.height * sheet.pxPerUnit <= room.height;
    if (fitsDown && sheet.width * sheet.pxPerUnit <= room.width) break;
  }
  if (!sheet) throw new Error(`no staff is as small as ${largestPx} px between its lines`);
  return { ...sheet, pxPerUnit: Math.min(sheet.pxPerUnit, room.width / sheet.width) };
}

function sheetAt(notation: Notation, widthPx: number, pxPerUnit: number): FittedSheet {
  const systems = sheetSystems(notation, widthPx / pxPerUnit - 1);
  const { placed, height } = stackedSystems(systems, undefined, MARGIN);
  return {
    systems: placed,
    width: Math.max(...systems.map(({ reach }) => reach)) + 1,
    height: height + MARGIN,
    pxPerUnit,
  };
}
