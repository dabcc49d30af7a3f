import type { Place } from './gridPlace.ts';

/** The cell of a place; in the row of counts that of the beat in which its step lies. */
export function cellOf(grid: HTMLElement | null, { row, column }: Place): HTMLElement | undefined {
  const inRow = `[data-row="${CSS.escape(row)}"]`;
  const exact = grid?.querySelector<HTMLElement>(`${inRow}[data-column="${column}"]`);
  if (exact) return exact;
  const cells = grid?.querySelectorAll<HTMLElement>(inRow) ?? [];
  return [...cells].findLast((cell) => Number(cell.dataset['column']) <= column);
}

/** The place of the cell that an event came from; undefined where it came from no cell. */
export function placeOf(target: EventTarget): Place | undefined {
  const cell = target instanceof Element ? target.closest<HTMLElement>('[data-column]') : null;
  const { row, column } = cell?.dataset ?? {};
  return row === undefined ? undefined : { row, column: Number(column) };
}
