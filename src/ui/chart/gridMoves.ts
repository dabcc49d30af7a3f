import { type ChartCell, type ChartLine, lineCells } from './chartLayout.ts';

/** The cell of another line that begins as far across, or the last one where that line is shorter. */
function besideIn(line: ChartLine | undefined, from: ChartLine, cell: ChartCell): ChartCell {
  if (!line) return cell;
  const start = line.bars[0]?.startTick ?? 0;
  const across = (cell.startTick - (from.bars[0]?.startTick ?? 0)) / from.spanTicks;
  const beside = lineCells(line).findLast(
    (other) => (other.startTick - start) / line.spanTicks <= across,
  );
  return beside ?? cell;
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
  const all = lines.flatMap(lineCells);
  const row = lines.findIndex((each) => lineCells(each).includes(cell));
  const line = lines[row];
  const index = all.indexOf(cell);
  if (!line) return undefined;
  const inReach = press.ctrlKey ? all : lineCells(line);
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
