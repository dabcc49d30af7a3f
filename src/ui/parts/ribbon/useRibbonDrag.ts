import { type KeyboardEvent, type PointerEvent, type RefObject, useRef, useState } from 'react';
import { dropPlace, placeAfterMove, type RibbonLayout } from './ribbonLayout.ts';

/** A pointer that moves less than this, in CSS pixels, taps. */
const TAP_PX = 8;

/** A block on its way: from which place of the form, and before which it would be put now. */
export type RibbonDrag = { readonly from: number; readonly before: number };

type Held = { readonly place: number; readonly x: number; readonly y: number };

/** Dragging blocks of the ribbon with mouse or finger; Escape lets the block go back. */
export function useRibbonDrag(
  strip: RefObject<HTMLElement | null>,
  layout: RibbonLayout,
  onMove: (from: number, to: number) => void,
) {
  const held = useRef<Held | undefined>(undefined);
  const dragged = useRef(false);
  const goal = useRef<RibbonDrag | undefined>(undefined);
  const [drag, setDrag] = useState<RibbonDrag>();

  const show = (next: RibbonDrag | undefined) => {
    goal.current = next;
    setDrag(next);
  };
  const letGo = () => {
    held.current = undefined;
    show(undefined);
  };
  return {
    drag,
    /** Whether the tap that ends now was a drag; asked once. */
    wasDrag: () => {
      const was = dragged.current;
      dragged.current = false;
      return was;
    },
    handlers: {
      onPointerDown: ({ button, target, clientX, clientY }: PointerEvent) => {
        dragged.current = false;
        const block = target instanceof Element ? target.closest('[data-place]') : null;
        const place = Number(block?.getAttribute('data-place'));
        held.current = block && button === 0 ? { place, x: clientX, y: clientY } : undefined;
      },
      onPointerMove: ({ clientX, clientY, pointerId }: PointerEvent) => {
        const box = strip.current?.getBoundingClientRect();
        const from = held.current;
        if (!box || !from) return;
        if (!goal.current && Math.hypot(clientX - from.x, clientY - from.y) < TAP_PX) return;
        if (!goal.current) strip.current?.setPointerCapture(pointerId);
        dragged.current = true;
        const before = dropPlace(layout, clientX - box.left, clientY - box.top);
        show({ from: from.place, before });
      },
      onPointerUp: () => {
        const to = goal.current;
        letGo();
        if (to) onMove(to.from, placeAfterMove(to.from, to.before));
      },
      onPointerCancel: letGo,
      onKeyDownCapture: (event: KeyboardEvent) => {
        if (event.key === 'Escape' && drag) letGo();
      },
    },
  };
}
