import type { Pixels } from './systemLayout.ts';

/** White that is left above and below what is brought into sight. */
const AROUND: Pixels = 12;

/** The lower edge of what is to be seen of the page: the desk lies over its foot. */
function lowerEdge(element: HTMLElement, scroller: HTMLElement): Pixels {
  const desk = element.closest('.pattern-page')?.querySelector('.desk');
  const foot = scroller.getBoundingClientRect().bottom;
  return desk ? Math.min(desk.getBoundingClientRect().top, foot) : foot;
}

/**
 * How far to scroll down (up, where negative) so that a stretch of the page lies between two edges with
 * some white around it; 0 where it does. Of one that is higher than the room the upper part is seen.
 */
export function scrolledBy(
  stretch: { readonly top: Pixels; readonly bottom: Pixels },
  room: { readonly top: Pixels; readonly bottom: Pixels },
): Pixels {
  const above = stretch.top - AROUND - room.top;
  const below = stretch.bottom + AROUND - room.bottom;
  if (above < 0) return above;
  return below > 0 ? Math.min(below, above) : 0;
}

/** Scrolls the page just so far that an element of it is to be seen above the desk. */
export function bringIntoSight(element: HTMLElement): void {
  const scroller = element.closest<HTMLElement>('main');
  if (!scroller) {
    element.scrollIntoView({ block: 'nearest' });
    return;
  }
  const room = {
    top: scroller.getBoundingClientRect().top,
    bottom: lowerEdge(element, scroller),
  };
  const by = scrolledBy(element.getBoundingClientRect(), room);
  if (by !== 0) scroller.scrollBy(0, by);
}
