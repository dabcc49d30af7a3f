import type { ReactNode } from 'react';
import { MusicText } from '../song/ChordName.tsx';
import type { ChartCell } from './chartLayout.ts';
import { spokenName } from './chordNames.ts';
import type { CellBracket, PrintedChord } from './printedChart.ts';

/** What a cell says to those who hear it. */
function cellLabel(
  cell: ChartCell,
  begins: PrintedChord | undefined,
  sounding: string,
  bracket: CellBracket | undefined,
  mark: string | undefined,
): string {
  const from = mark === undefined ? '' : `, from here ${mark}`;
  const place = `Bar ${cell.bar + 1}, beat ${cell.beat + 1}`;
  if (!begins) return `${place}: ${spokenName(sounding)} goes on${from}`;
  const length = `${begins.beats} ${begins.beats === 1 ? 'beat' : 'beats'}`;
  const below = begins.below === '' ? '' : `, ${spokenName(begins.below)}`;
  const twoFive = bracket?.begins ? ', begins a ii–V' : '';
  return `${place}: ${spokenName(begins.name)}, ${length}${below}${twoFive}${from}`;
}

/**
 * One felt beat of the chart: the chord that begins here with its length as a figure, or a slash for
 * a beat on which the chord before goes on; the line below lasts as long as the chord, a bracket under
 * all as long as a ii–V.
 */
export function ChartCellView({
  cell,
  begins,
  sounding,
  bracket,
  mark,
  isActive,
  drag,
  editor,
}: {
  readonly cell: ChartCell;
  readonly begins: PrintedChord | undefined;
  /** Name of the chord that sounds in the cell. */
  readonly sounding: string;
  readonly bracket: CellBracket | undefined;
  /** The pattern that begins with the cell, or that the hands rest from here. */
  readonly mark: string | undefined;
  readonly isActive: boolean;
  /** Whether a chord that is dragged came from here or would begin here. */
  readonly drag: 'from' | 'to' | undefined;
  readonly editor: ReactNode;
}) {
  return (
    <div
      role="gridcell"
      className="chart-cell"
      tabIndex={isActive ? 0 : -1}
      data-tick={cell.startTick}
      data-bar={cell.bar}
      data-slot={cell.slot}
      data-drag={drag}
      style={{ flexGrow: cell.lengthTicks }}
    >
      <span className="visually-hidden">{cellLabel(cell, begins, sounding, bracket, mark)}</span>
      <span className="chart-chord" aria-hidden="true">
        {begins && (
          <span style={{ fontSize: `${begins.sizePx}px` }}>
            <MusicText text={begins.name} />
          </span>
        )}
      </span>
      <span className="chart-beat" aria-hidden="true">
        {begins ? begins.beats : <span className="chart-slash" />}
      </span>
      <span className={cell.isLast ? 'chart-length chart-length-end' : 'chart-length'} />
      <span className="chart-below" aria-hidden="true">
        {begins && <MusicText text={begins.below} />}
      </span>
      {bracket && (
        <span
          className="chart-two-five"
          data-begins={bracket.begins || undefined}
          data-ends={bracket.ends || undefined}
        />
      )}
      {editor}
    </div>
  );
}
