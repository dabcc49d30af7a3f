import { fittingPx, type TypeSizes } from '../../kit/typeWidth.ts';

/** Sizes of the form's ribbon in CSS pixels: a row with the space above it, and widths of a block. */
export const RIBBON_PX = {
  row: 68,
  /** The narrowest block that a finger finds. */
  narrowest: 46,
  /** The narrowest in which a name can be read. */
  readable: 92,
} as const;

/** Sizes of a block's name, and the room beside it in its block, in CSS pixels. */
const NAME_PX: TypeSizes = { smallest: 15, usual: 20 };
const NAME_ROOM_PX = 18;

const MOST_ROWS = 3;

export type RibbonBlock = { readonly row: number; readonly x: number; readonly width: number };

export type RibbonLayout = { readonly blocks: readonly RibbonBlock[]; readonly rows: number };

/** For every block its row, where no row holds more than `most` bars (unless one block alone does). */
function rowsOfBlocks(bars: readonly number[], most: number): number[] {
  let row = 0;
  let held = 0;
  return bars.map((count) => {
    if (held > 0 && held + count > most) {
      row += 1;
      held = 0;
    }
    held += count;
    return row;
  });
}

/** Blocks in at most `rows` rows, the longest row as short as can be: how many bars it holds and who stands where. */
function balancedRows(bars: readonly number[], rows: number) {
  const total = bars.reduce((sum, count) => sum + count, 0);
  let most = Math.max(1, Math.ceil(total / rows), ...bars);
  let rowOf = rowsOfBlocks(bars, most);
  while ((rowOf.at(-1) ?? 0) >= rows) {
    most += 1;
    rowOf = rowsOfBlocks(bars, most);
  }
  return { most, rowOf };
}

/** As many rows as the shortest section needs to be readable, three at the most. */
function rowsFor(bars: readonly number[], widthPx: number) {
  const shortest = Math.min(...bars.filter((count) => count > 0));
  for (let rows = 1; rows < MOST_ROWS; rows++) {
    const balanced = balancedRows(bars, rows);
    if (!(shortest * (widthPx / balanced.most) < RIBBON_PX.readable)) return balanced;
  }
  return balancedRows(bars, MOST_ROWS);
}

/**
 * Where the blocks of the form stand: one for each playing with its number of bars, as wide as it has
 * bars. The ribbon fills the width, in as few rows of about the same length as let the shortest
 * section be read, three at the most. No block is narrower than a finger; blocks that are widened so
 * take their room from the others of their row.
 */
export function ribbonLayout(bars: readonly number[], widthPx: number): RibbonLayout {
  const { most, rowOf } = rowsFor(bars, widthPx);
  const scale = widthPx / most;
  const rows = (rowOf.at(-1) ?? 0) + 1;
  const wanted = bars.map((count) => Math.max(RIBBON_PX.narrowest, count * scale));
  const rowWidths = Array.from({ length: rows }, (_, row) =>
    wanted.reduce((sum, width, i) => (rowOf[i] === row ? sum + width : sum), 0),
  );
  let x = 0;
  const blocks = wanted.map((width, i) => {
    const row = rowOf[i] ?? 0;
    if (row !== rowOf[i - 1]) x = 0;
    const fitted = width * Math.min(1, widthPx / (rowWidths[row] ?? widthPx));
    const block = { row, x, width: fitted };
    x += fitted;
    return block;
  });
  return { blocks, rows };
}

/** The size of a playing's name in a block of so many pixels. */
export function blockNamePx(name: string, widthPx: number): number {
  return fittingPx(name, widthPx - NAME_ROOM_PX, NAME_PX);
}

/**
 * The place (0-based, among all blocks) before which something let go at a point of the ribbon is
 * put: before the first block whose middle lies beyond it in reading order; at the end after all.
 */
export function dropPlace({ blocks, rows }: RibbonLayout, x: number, y: number): number {
  const row = Math.min(rows - 1, Math.max(0, Math.floor(y / RIBBON_PX.row)));
  const place = blocks.findIndex(
    (block) => block.row > row || (block.row === row && block.x + block.width / 2 > x),
  );
  return place < 0 ? blocks.length : place;
}

/** The place that a block moved from `from` has after it was let go before place `before`. */
export function placeAfterMove(from: number, before: number): number {
  return before > from ? before - 1 : before;
}

/** Where the line that marks a gap before place `before` stands. */
export function gapAt({ blocks }: RibbonLayout, before: number): RibbonBlock {
  const next = blocks[before];
  const last = blocks[before - 1];
  if (next && (next.x > 0 || !last)) return { ...next, width: 0 };
  if (last) return { row: last.row, x: last.x + last.width, width: 0 };
  return { row: 0, x: 0, width: 0 };
}
