import { type PointerEvent, useRef } from 'react';
import type { BarRange } from '../../../app/score.ts';
import { selectTimeline } from '../../../state/selectors.ts';
import { markedInEntry, rangeOfBars } from '../song/marking.ts';
import { useParts } from '../tool/parts.ts';
import { useProject, useView } from '../tool/useProject.ts';

/** A pointer that moves less than this, in CSS pixels, taps. */
const TAP_PX = 10;

export type BarMarking = {
  /** The marked bars of the section in this playing. */
  readonly marked: BarRange | undefined;
  /** Marks from the bar where marking began to this one; without a beginning, from here. */
  readonly markTo: (bar: number) => void;
  /** Marking begins anew from this bar. */
  readonly beginAt: (bar: number | undefined) => void;
  readonly pointer: {
    readonly onPointerDown: (event: PointerEvent) => void;
    readonly onPointerMove: (event: PointerEvent) => void;
    readonly onPointerUp: () => void;
    readonly onPointerCancel: () => void;
  };
  /** Whether the tap that ends now was a drag; asked once. */
  readonly wasDrag: () => boolean;
  /** The tap that ends next is a drag of something else. */
  readonly asDrag: () => void;
};

type Drag = { readonly bar: number; readonly x: number; readonly y: number; moved: boolean };

function barUnder(x: number, y: number): number | undefined {
  const bar = document.elementFromPoint(x, y)?.closest<HTMLElement>('[data-bar]')?.dataset['bar'];
  return bar === undefined ? undefined : Number(bar);
}

/** Marking bars of the section's playing at `place` by dragging over them or by keys; nothing where it is not played. */
export function useBarMarking(place: number | undefined): BarMarking {
  const { view } = useParts();
  const timeline = useProject(selectTimeline);
  const range = useView((state) => state.range);
  const anchor = useRef<number | undefined>(undefined);
  const drag = useRef<Drag | undefined>(undefined);
  const dragged = useRef(false);

  const markTo = (bar: number) => {
    anchor.current ??= bar;
    if (place !== undefined) view.set({ range: rangeOfBars(timeline, place, anchor.current, bar) });
  };

  return {
    marked: place === undefined ? undefined : markedInEntry(timeline, place, range),
    markTo,
    beginAt: (bar) => {
      anchor.current = bar;
    },
    pointer: {
      onPointerDown: ({ button, clientX, clientY }) => {
        const bar = barUnder(clientX, clientY);
        dragged.current = false;
        drag.current =
          button === 0 && bar !== undefined
            ? { bar, x: clientX, y: clientY, moved: false }
            : undefined;
      },
      onPointerMove: ({ clientX, clientY }) => {
        const held = drag.current;
        if (!held) return;
        held.moved ||= Math.hypot(clientX - held.x, clientY - held.y) > TAP_PX;
        const bar = held.moved ? barUnder(clientX, clientY) : undefined;
        if (bar === undefined) return;
        dragged.current = true;
        anchor.current = held.bar;
        markTo(bar);
      },
      onPointerUp: () => {
        drag.current = undefined;
      },
      onPointerCancel: () => {
        drag.current = undefined;
      },
    },
    wasDrag: () => {
      const was = dragged.current;
      dragged.current = false;
      return was;
    },
    asDrag: () => {
      dragged.current = true;
    },
  };
}
