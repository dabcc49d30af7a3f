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

/** The notation as large as it fits into a room without scrolling, or as small as is legible. Throws for a room without width. */
export function fittingSheet(notation: Notation, room: Room): FittedSheet {
  const sheets = STAFF_SPACES_PX.map((px) => sheetAt(notation, room.width, px));
  return (
    sheets.find(({ width, height, pxPerUnit }) => {
      const fitsDown = height * pxPerUnit <= room.height;
      return fitsDown && width * pxPerUnit <= room.width;
    }) ?? sheets.at(-1)!
  );
}

/** The notation over a width, two staff lines `staffSpacePx` apart, as long as it gets. */
export function sheetAt(notation: Notation, widthPx: number, staffSpacePx: number): FittedSheet {
  if (widthPx <= 0) throw new Error(`no notation is ${widthPx} px wide`);
  const pxPerUnit = staffSpacePx / SPACE;
  const systems = sheetSystems(notation, widthPx / pxPerUnit - 1);
  const { placed, height } = stackedSystems(systems, undefined, MARGIN);
  return {
    systems: placed,
    width: Math.max(...systems.map((system) => system.width)) + 1,
    height: height + MARGIN,
    pxPerUnit,
  };
}
