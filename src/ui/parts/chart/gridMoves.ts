import type { Ticks } from '../../../core/time/ticks.ts';
import { type ChartCell, type ChartLine, type LaidChartBar, lineCells } from './chartLayout.ts';

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

/**
 * The cell to which a change goes that begins in `from` and is pulled to `tick`: the one that is there,
 * or the nearest to it that still lies behind the change before and ahead of the change after. `from`
 * itself outside the chart.
 */
export function cellForChange(
  bars: readonly LaidChartBar[],
  from: ChartCell,
  tick: Ticks | undefined,
): ChartCell {
  const cells = lineCells({ bars });
  const place = cells.findIndex(({ startTick }) => startTick === from.startTick);
  const before = cells.findLastIndex((cell, i) => i < place && cell.slot !== undefined);
  const after = cells.findIndex((cell, i) => i > place && cell.slot !== undefined);
  const within = cells.slice(before + 1, after < 0 ? cells.length : after);
  const goal = cells.findLast((cell) => tick !== undefined && cell.startTick <= tick);
  if (!goal) return from;
  return goal.startTick < from.startTick
    ? (within.find((cell) => cell.startTick >= goal.startTick) ?? from)
    : (within.findLast((cell) => cell.startTick <= goal.startTick) ?? from);
}
