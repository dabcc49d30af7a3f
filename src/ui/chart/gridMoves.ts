import type { ChartCell, ChartLine } from './chartLayout.ts';

function cellsOf(line: ChartLine | undefined): readonly ChartCell[] {
  return line?.flatMap((bar) => bar.cells) ?? [];
}

/** The cell of another line that begins as far into it, or the last one where that line is shorter. */
function besideIn(line: ChartLine | undefined, from: ChartLine, cell: ChartCell): ChartCell {
  const into = cell.startTick - (from[0]?.startTick ?? 0);
  const start = line?.[0]?.startTick ?? 0;
  return cellsOf(line).findLast((other) => other.startTick - start <= into) ?? cell;
}

/**
 * The cell that a key leads to in the chart's grid: arrows to the next cell (over the lines' ends in
 * playing order, up and down to the line beside), Home and End in the line, with Control in the whole
 * chart. The cell itself at the edges; undefined for keys that do not move.
 */
export function cellMoved(
  lines: readonly ChartLine[],
  cell: ChartCell,
  press: { readonly key: string; readonly ctrlKey: boolean },
): ChartCell | undefined {
  const all = lines.flatMap(cellsOf);
  const row = lines.findIndex((line) => cellsOf(line).includes(cell));
  const line = lines[row];
  const index = all.indexOf(cell);
  if (!line) return undefined;
  const inReach = press.ctrlKey ? all : cellsOf(line);
  switch (press.key) {
    case 'ArrowLeft':
      return all[index - 1] ?? cell;
    case 'ArrowRight':
      return all[index + 1] ?? cell;
    case 'ArrowUp':
      return row > 0 ? besideIn(lines[row - 1], line, cell) : cell;
    case 'ArrowDown':
      return row < lines.length - 1 ? besideIn(lines[row + 1], line, cell) : cell;
    case 'Home':
      return inReach[0];
    case 'End':
      return inReach.at(-1);
    default:
      return undefined;
  }
}
