import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layoutPages, SYSTEM_GAP } from '../../../../src/ui/parts/notation/pages.ts';
import { a4Page, printedSheet } from '../../../../src/ui/parts/notation/printedSheet.ts';
import { type SheetSystem, sheetSystems } from '../../../../src/ui/parts/notation/systems.ts';
import { pattern } from '../../../support/patterns.ts';
import { barsOf, notationOf } from '../../../support/sheets.ts';

/** Systems of which only the heights matter. */
function systems(...heights: readonly number[]): SheetSystem[] {
  const [real] = sheetSystems(notationOf(pattern('4/4', { right: 'C---' }), '| C |'), 700);
  return heights.map((total) => ({ ...real!, heights: { ...real!.heights, total } }));
}

const PAGE = { width: 800, height: 1000, titleHeight: 100 };

describe('pages', () => {
  it('break between systems and keep their order', () => {
    const given = systems(300, 300, 300, 300, 300);
    const pages = layoutPages(given, PAGE);
    expect(pages.map((page) => page.systems.length)).toEqual([2, 3]);
    expect(pages.flatMap((page) => page.systems.map(({ system }) => system))).toEqual(given);
  });

  it('leave room for the title on the first page only', () => {
    const [first, second] = layoutPages(systems(300, 300, 300, 300), PAGE);
    expect(first!.systems[0]!.y).toBe(100);
    expect(second!.systems[0]!.y).toBe(0);
  });

  it('spread systems down a page that others follow, not the last', () => {
    const [first, last] = layoutPages(systems(300, 300, 300, 300), PAGE);
    const gap = (page: typeof first) => page!.systems[1]!.y - page!.systems[0]!.y - 300;
    expect(gap(first)).toBeGreaterThan(SYSTEM_GAP);
    expect(gap(last)).toBe(SYSTEM_GAP);
  });

  it('give a system that is higher than a page one of its own', () =>
    expect(layoutPages(systems(200, 1500, 200), PAGE).map((page) => page.systems.length)).toEqual([
      1, 1, 1,
    ]));

  it('of no systems are none', () => expect(layoutPages([], PAGE)).toEqual([]));

  it('hold every system inside them, none over another', () =>
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 100, max: 800 }), { minLength: 1, maxLength: 20 }),
        (heights) => {
          const pages = layoutPages(systems(...heights), PAGE);
          expect(pages.flatMap((page) => page.systems)).toHaveLength(heights.length);
          for (const { systems: placed } of pages)
            for (const [i, { system, y }] of placed.entries()) {
              const end = y + system.heights.total;
              expect(end).toBeLessThanOrEqual(PAGE.height + 1e-6);
              const next = placed[i + 1];
              if (next) expect(next.y - end).toBeGreaterThanOrEqual(SYSTEM_GAP - 1e-6);
            }
        },
      ),
    ));
});

describe('printed pages', () => {
  it('are filled across, and as many as it takes, at the smallest size', () => {
    const { page, pages } = printedSheet(barsOf(24));
    expect(page).toEqual(a4Page(2.2));
    expect(pages.length).toBeGreaterThan(1);
    for (const { system } of pages.flatMap(({ systems: placed }) => placed))
      expect(system.width).toBeCloseTo(page.width, 3);
  });

  it('are one, and larger, for less music', () => {
    const [little, some] = [printedSheet(barsOf(1)), printedSheet(barsOf(8))];
    expect([little.pages.length, some.pages.length]).toEqual([1, 1]);
    expect(little.page).toEqual(a4Page(3.4));
    expect(some.page.width).toBeGreaterThan(little.page.width);
  });
});
