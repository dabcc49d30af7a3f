import { type KeyboardEvent, type MouseEvent, type RefObject, useState } from 'react';
import type { Ticks } from '../../../core/time/ticks.ts';
import type { Leaving } from './CellEditor.tsx';
import { type ChartCell, cellAt } from './chartLayout.ts';
import { cellMoved } from './gridMoves.ts';
import type { PrintedChart } from './printedChart.ts';
import type { BarMarking } from './useBarMarking.ts';
import type { ChartWriting } from './useChartWriting.ts';

/** Keys that begin a chord's name: a letter, a numeral, a figure or a sign. */
const BEGINS_NAME = /^[A-Ga-gIVivN1-7♭♯#]$/;

/** The cell that is typed into; `typed` is the first key of a new text. */
export type Editing = { readonly tick: Ticks; readonly typed?: string };

const LEAVING_KEYS: Readonly<Record<Leaving, string>> = {
  stay: '',
  next: 'ArrowRight',
  before: 'ArrowLeft',
  elsewhere: '',
};

/** What keys and taps do in the chart's grid, and which cell is open for typing. */
export function useGridActs({
  grid,
  chart,
  active,
  onActive,
  marking,
  writing,
}: {
  readonly grid: RefObject<HTMLElement | null>;
  readonly chart: PrintedChart;
  readonly active: ChartCell | undefined;
  readonly onActive: (tick: Ticks) => void;
  readonly marking: BarMarking;
  readonly writing: ChartWriting;
}) {
  const { bars, lines } = chart;
  const [editing, setEditing] = useState<Editing>();

  const focusCell = (tick: Ticks) => {
    onActive(tick);
    grid.current?.querySelector<HTMLElement>(`[data-tick="${tick}"]`)?.focus();
  };
  const open = (cell: ChartCell, typed?: string) => {
    onActive(cell.startTick);
    setEditing({ tick: cell.startTick, ...(typed === undefined ? {} : { typed }) });
  };

  const mark = (cell: ChartCell, key: string): void => {
    const perLine = lines[0]?.bars.length ?? 1;
    const by = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -perLine, ArrowDown: perLine }[key];
    const bar = by === undefined ? undefined : bars[cell.bar + by];
    if (!bar) return;
    marking.markTo(bar.bar);
    focusCell(bar.startTick);
  };
  const moveChange = (from: Ticks, to: Ticks | undefined): void => {
    if (to !== undefined && writing.move(from, to)) focusCell(to);
  };
  const go = (cell: ChartCell): void => {
    focusCell(cell.startTick);
    marking.beginAt(cell.bar);
  };

  /** Whether the key meant something here. */
  const act = (cell: ChartCell, event: KeyboardEvent): boolean => {
    const { key, shiftKey, ctrlKey, metaKey, altKey } = event;
    const isSideways = key === 'ArrowLeft' || key === 'ArrowRight';
    const moved = cellMoved(lines, cell, { key, ctrlKey });
    if (shiftKey && key.startsWith('Arrow')) mark(cell, key);
    else if (ctrlKey && isSideways)
      moveChange(cell.startTick, cellMoved(lines, cell, { key, ctrlKey: false })?.startTick);
    else if (moved) go(moved);
    else if (key === 'Enter' || key === 'F2') open(cell);
    else if (key === 'Delete' || key === 'Backspace') writing.write(cell, '');
    else if (BEGINS_NAME.test(key) && !ctrlKey && !metaKey && !altKey) open(cell, key);
    else return false;
    return true;
  };

  return {
    editing,
    moveChange,
    leave: (cell: ChartCell, leaving: Leaving) => {
      setEditing(undefined);
      if (leaving === 'elsewhere') return;
      const press = { key: LEAVING_KEYS[leaving], ctrlKey: false };
      focusCell((cellMoved(lines, cell, press) ?? cell).startTick);
    },
    press: (event: KeyboardEvent) => {
      if (active && act(active, event)) event.preventDefault();
    },
    tap: (event: MouseEvent) => {
      const tapped = event.target instanceof Element && event.target.closest('[data-tick]');
      if (!tapped || marking.wasDrag() || event.target instanceof HTMLInputElement) return;
      const cell = cellAt(bars, Number(tapped.getAttribute('data-tick')));
      const broken = grid.current?.querySelector<HTMLElement>('[aria-invalid=true]');
      if (broken) broken.focus();
      else if (cell) {
        marking.beginAt(cell.bar);
        open(cell);
      }
    },
  };
}
