import { type RefObject, useEffect, useState } from 'react';
import type { Room } from './fittingSheet.ts';

const NO_ROOM: Room = { width: 0, height: 0 };

/** Inner width and height of an element in CSS pixels, now and after every change; 0 until it stands on the page. */
export function useRoom(element: RefObject<HTMLElement | null>): Room {
  const [room, setRoom] = useState(NO_ROOM);
  useEffect(() => {
    const measured = element.current;
    if (!measured) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      const { width, height } = entry?.contentRect ?? NO_ROOM;
      setRoom({ width, height });
    });
    observer.observe(measured);
    return () => observer.disconnect();
  }, [element]);
  return room;
}
