import type { Pixels } from '../../parts/grid/systemLayout.ts';

/** Wider lists than this have two columns. */
const TWO_COLUMNS: Pixels = 1180;

/** Room in an entry that is not the picture's or the words': buttons, white between. */
const BESIDE: Pixels = 116;

/** Share of the rest that the picture takes. */
const PICTURE_SHARE = 0.52;

/** Columns of the shelf on a list of some width, and how wide the pictures in them are. */
export function shelfColumns(width: Pixels): {
  readonly columns: 1 | 2;
  readonly pictureWidth: Pixels;
} {
  const columns = width >= TWO_COLUMNS ? 2 : 1;
  const entry = (width - (columns - 1) * 36) / columns;
  return { columns, pictureWidth: Math.max(Math.round((entry - BESIDE) * PICTURE_SHARE), 160) };
}
