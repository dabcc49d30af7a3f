import { type RefObject, useEffect, useState } from 'react';

/** Inner width of an element in CSS pixels, now and after every change; 0 until it stands on the page. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const measured = element.current;
    if (!measured) return undefined;
    const observer = new ResizeObserver(([entry]) => setWidth(entry?.contentRect.width ?? 0));
    observer.observe(measured);
    return () => observer.disconnect();
  }, [element]);
  return width;
}
