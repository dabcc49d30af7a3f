import { type KeyboardEvent, type PointerEvent, type RefObject, useRef, useState } from 'react';
import type { Ticks } from '../../../core/time/ticks.ts';
import type { ChartCell } from './chartLayout.ts';
import { cellForChange } from './gridMoves.ts';
import type { PrintedChart } from './printedChart.ts';

/** A pointer that moves less than this, in CSS pixels, taps. */
const TAP_PX = 10;

/** A chord on its way: where its change stands, and where it would stand now. */
export type ChangeDrag = { readonly from: Ticks; readonly to: Ticks };

type Held = { readonly cell: ChartCell; readonly x: number; readonly y: number };

function tickUnder(x: number, y: number): Ticks | undefined {
  const cell = document.elementFromPoint(x, y)?.closest<HTMLElement>('[data-tick]');
  return cell ? Number(cell.dataset['tick']) : undefined;
}

/**
 * Dragging a chord by its name to another beat, between the changes beside it; the section's first
 * stays. Escape lets it go back. `begin` tells whether the pointer took hold of one.
 */
export function useChangeDrag(
  grid: RefObject<HTMLElement | null>,
  { bars }: PrintedChart,
  onMove: (from: Ticks, to: Ticks) => void,
) {
  const held = useRef<Held | undefined>(undefined);
  const goal = useRef<ChangeDrag | undefined>(undefined);
  const [drag, setDrag] = useState<ChangeDrag>();

  const show = (next: ChangeDrag | undefined) => {
    goal.current = next;
    if (next?.from !== drag?.from || next?.to !== drag?.to) setDrag(next);
  };
  const letGo = () => {
    held.current = undefined;
    show(undefined);
  };
  return {
    drag,
    begin: ({ button, target, clientX, clientY }: PointerEvent): boolean => {
      const name = target instanceof Element && target.closest('.chart-chord');
      const tick = Number(name && name.closest('[data-slot]')?.getAttribute('data-tick'));
      const cell = bars.flatMap(({ cells }) => cells).find(({ startTick }) => startTick === tick);
      held.current =
        button === 0 && tick > 0 && cell ? { cell, x: clientX, y: clientY } : undefined;
      return held.current !== undefined;
    },
    /** Whether a chord is on its way. */
    move: ({ clientX, clientY, pointerId }: PointerEvent): boolean => {
      const from = held.current;
      if (!from) return false;
      if (!goal.current && Math.hypot(clientX - from.x, clientY - from.y) < TAP_PX) return false;
      if (!goal.current) grid.current?.setPointerCapture(pointerId);
      const to = cellForChange(bars, from.cell, tickUnder(clientX, clientY));
      show({ from: from.cell.startTick, to: to.startTick });
      return true;
    },
    end: (): void => {
      const to = goal.current;
      letGo();
      if (to && to.from !== to.to) onMove(to.from, to.to);
    },
    letGo,
    press: (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && goal.current) letGo();
    },
  };
}
