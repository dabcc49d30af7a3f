import { type RefObject, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { countSyllables } from '../../../core/rhythm/counts.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { leastHeight, type RowLayout, rowLayout, rowsOf } from './rowLayout.ts';
import { type Pixels, type System, systemsOf } from './systemLayout.ts';

/** White between two systems. */
export const BETWEEN_SYSTEMS: Pixels = 22;

/** Inner size of an element, again whenever it changes; zero before it is on the page. */
function useSize(element: RefObject<HTMLElement | null>): {
  readonly width: Pixels;
  readonly height: Pixels;
} {
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const watched = element.current;
    if (!watched) return undefined;
    const measure = () =>
      setSize((before) => {
        const { clientWidth: width, clientHeight: height } = watched;
        return before.width === width && before.height === height ? before : { width, height };
      });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(watched);
    return () => observer.disconnect();
  }, [element]);
  return size;
}

/**
 * How a pattern is laid out on the room that `frame` has: its systems, the rows of each, what is
 * counted on every step, and the height below which the frame must not go. No systems before the
 * frame is on the page.
 */
export type GridLayout = {
  readonly frame: RefObject<HTMLDivElement | null>;
  readonly systems: readonly System[];
  readonly rows: RowLayout;
  readonly syllables: readonly string[];
  readonly least: Pixels;
};

/** The layout of a pattern, made anew only when its grid, its sources or the room change. */
export function useGridLayout({ meter, bars, divisions, sources }: Pattern): GridLayout {
  const frame = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(frame);
  const systems = useMemo(
    () => (width === 0 ? [] : systemsOf({ meter, bars, divisions }, width)),
    [meter, bars, divisions, width],
  );
  const syllables = useMemo(
    () => countSyllables({ meter, bars, divisions }),
    [meter, bars, divisions],
  );
  const order = useMemo(() => rowsOf(sources), [sources]);
  const gaps = Math.max(systems.length - 1, 0) * BETWEEN_SYSTEMS;
  const budget = (height - gaps) / Math.max(systems.length, 1);
  const rows = useMemo(() => rowLayout(order, budget), [order, budget]);
  return { frame, systems, rows, syllables, least: systems.length * leastHeight(order) + gaps };
}
