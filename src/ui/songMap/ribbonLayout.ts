/** Sizes of the form's ribbon in CSS pixels: a row with the space above it, and the narrowest block that a finger finds. */
export const RIBBON_PX = { row: 72, narrowest: 46, readable: 74 } as const;

/** The ribbon is at most so many times as long as the page is wide to keep short sections readable. */
const LONGEST_RIBBON = 1.9;

export type RibbonBlock = { readonly row: number; readonly x: number; readonly width: number };

export type RibbonLayout = { readonly blocks: readonly RibbonBlock[]; readonly rows: number };

function pxPerBar(bars: readonly number[], widthPx: number): number {
  const filling =
    widthPx /
    Math.max(
      1,
      bars.reduce((total, count) => total + count, 0),
    );
  const shortest = Math.min(...bars.filter((count) => count > 0));
  const readable = Number.isFinite(shortest) ? RIBBON_PX.readable / shortest : filling;
  return Math.max(filling, Math.min(readable, LONGEST_RIBBON * filling));
}

/**
 * Where the blocks of the form stand: one for each playing with its number of bars, as wide as it has
 * bars. The ribbon fills the width; where short sections would be too narrow to read it goes on in
 * further rows. Nothing is narrower than a finger or wider than a row.
 */
export function ribbonLayout(bars: readonly number[], widthPx: number): RibbonLayout {
  const scale = pxPerBar(bars, widthPx);
  let row = 0;
  let x = 0;
  const blocks = bars.map((count) => {
    const width = Math.min(widthPx, Math.max(RIBBON_PX.narrowest, count * scale));
    if (x > 0 && x + width > widthPx + 0.5) {
      row += 1;
      x = 0;
    }
    const block = { row, x, width };
    x += width;
    return block;
  });
  return { blocks, rows: row + 1 };
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
