import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dropPlace,
  gapAt,
  placeAfterMove,
  RIBBON_PX,
  ribbonLayout,
} from '../../src/ui/songMap/ribbonLayout.ts';

describe('the ribbon', () => {
  it('fills the width with blocks as wide as they have bars', () => {
    const { blocks, rows } = ribbonLayout([8, 16, 8], 640);
    expect(blocks).toEqual([
      { row: 0, x: 0, width: 160 },
      { row: 0, x: 160, width: 320 },
      { row: 0, x: 480, width: 160 },
    ]);
    expect(rows).toBe(1);
  });

  it('goes on in a second row where short sections would be too narrow to read', () => {
    const { blocks, rows } = ribbonLayout([4, 16, 8, 16, 8, 8, 16, 4], 900);
    expect(rows).toBe(2);
    expect(blocks[0]?.width).toBe(RIBBON_PX.readable);
    expect(blocks[1]?.width).toBe(4 * RIBBON_PX.readable);
  });

  it('never goes beyond the width, and its blocks never lie over each other', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 40 }), { maxLength: 30 }),
        fc.integer({ min: 300, max: 1600 }),
        (bars, width) => {
          const { blocks } = ribbonLayout(bars, width);
          for (const [i, block] of blocks.entries()) {
            expect(block.x + block.width).toBeLessThanOrEqual(width + 1);
            expect(block.width).toBeGreaterThanOrEqual(RIBBON_PX.narrowest);
            const next = blocks[i + 1];
            if (next?.row === block.row) expect(next.x).toBe(block.x + block.width);
          }
        },
      ),
    );
  });
});

describe('a block let go', () => {
  const layout = ribbonLayout([8, 8, 8], 600);

  it('goes before the first block whose middle lies beyond', () => {
    expect(dropPlace(layout, 50, 10)).toBe(0);
    expect(dropPlace(layout, 150, 10)).toBe(1);
    expect(dropPlace(layout, 590, 10)).toBe(3);
  });

  it('counts without the place that it leaves', () => {
    expect(placeAfterMove(0, 3)).toBe(2);
    expect(placeAfterMove(2, 0)).toBe(0);
    expect(placeAfterMove(1, 1)).toBe(1);
    expect(placeAfterMove(1, 2)).toBe(1);
  });

  it('shows the gap that it would go into', () => {
    expect(gapAt(layout, 0)).toEqual({ row: 0, x: 0, width: 0 });
    expect(gapAt(layout, 3)).toEqual({ row: 0, x: 600, width: 0 });
  });
});
