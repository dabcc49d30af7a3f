import type { Units } from './glyphs.ts';
import type { SheetSystem } from './systems.ts';

/** A page's printable area in drawing units, and how much of the first page the title takes. */
export type PageSize = {
  readonly width: Units;
  readonly height: Units;
  readonly titleHeight: Units;
};

/** A system and how far down its page it stands. */
export type PlacedSystem = { readonly system: SheetSystem; readonly y: Units };

/** One page; the title stands at the top of the first. */
export type SheetPage = { readonly systems: readonly PlacedSystem[] };

/** Least and greatest distance between two systems. */
export const SYSTEM_GAP: Units = 34;
const WIDEST_GAP: Units = 80;

/** Systems one under the other as close as they may stand, and how high they are together. */
export function stackedSystems(
  systems: readonly SheetSystem[],
  gap: Units = SYSTEM_GAP,
  top: Units = 0,
): { readonly placed: readonly PlacedSystem[]; readonly height: Units } {
  let y = top;
  const placed = systems.map((system) => {
    const here = { system, y };
    y += system.heights.total + gap;
    return here;
  });
  return { placed, height: systems.length === 0 ? top : y - gap };
}

/**
 * Systems on pages: as many as fit on each, breaks only between systems; one that is higher than a
 * page stands alone on it. Where more pages follow, the systems spread out down the page as far as
 * looks well; on the last page they stand as close as they may.
 */
export function layoutPages(systems: readonly SheetSystem[], page: PageSize): SheetPage[] {
  const pages = filledPages(systems, page);
  return pages.map((onPage, i) => {
    const top = i === 0 ? page.titleHeight : 0;
    const { height } = stackedSystems(onPage, SYSTEM_GAP, top);
    const spare = Math.max(0, page.height - height) / Math.max(1, onPage.length - 1);
    const isLast = i === pages.length - 1;
    const gap = isLast ? SYSTEM_GAP : Math.min(WIDEST_GAP, SYSTEM_GAP + spare);
    return { systems: stackedSystems(onPage, gap, top).placed };
  });
}

function filledPages(systems: readonly SheetSystem[], page: PageSize): SheetSystem[][] {
  const pages: SheetSystem[][] = [];
  let bottom = Number.POSITIVE_INFINITY;
  for (const system of systems) {
    const height = system.heights.total;
    if (bottom + SYSTEM_GAP + height > page.height) {
      pages.push([]);
      bottom = (pages.length === 1 ? page.titleHeight : 0) - SYSTEM_GAP;
    }
    pages.at(-1)!.push(system);
    bottom += SYSTEM_GAP + height;
  }
  return pages;
}
