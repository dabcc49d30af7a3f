import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dropPlace,
  gapAt,
  placeAfterMove,
  RIBBON_PX,
  ribbonLayout,
} from '../../../../src/ui/parts/ribbon/ribbonLayout.ts';

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

  it('goes on in rows of about the same length where short sections would be too narrow to read', () => {
    const { blocks, rows } = ribbonLayout([4, 8, 4, 8, 8, 4, 8, 8, 8, 4], 960);
    expect(rows).toBe(2);
    expect(blocks.map((block) => block.row)).toEqual([0, 0, 0, 0, 0, 1, 1, 1, 1, 1]);
    expect(blocks[0]).toEqual({ row: 0, x: 0, width: 120 });
    expect(blocks[9]).toEqual({ row: 1, x: 840, width: 120 });
  });

  it('has three rows at the most, and then narrow blocks', () => {
    const bars = Array.from({ length: 40 }, (_, i) => (i % 8 === 0 ? 1 : 8));
    const { blocks, rows } = ribbonLayout(bars, 900);
    expect(rows).toBe(3);
    expect(blocks[0]!.width).toBeLessThan(RIBBON_PX.readable);
  });

  it('never goes beyond the width, and its blocks never lie over each other', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 40 }), { maxLength: 30 }),
        fc.integer({ min: 500, max: 1600 }),
        (bars, width) => {
          const { blocks, rows } = ribbonLayout(bars, width);
          expect(rows).toBeLessThanOrEqual(3);
          for (const [i, block] of blocks.entries()) {
            expect(block.x + block.width).toBeLessThanOrEqual(width + 0.001);
            expect(block.width).toBeGreaterThan(0);
            const next = blocks[i + 1];
            if (next?.row === block.row) expect(next.x).toBeCloseTo(block.x + block.width, 6);
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
