import { useRef } from 'react';
import type { FormEntryId } from '../../../core/ids.ts';
import type { Section } from '../../../core/song/song.ts';
import { formatMeter } from '../../../core/time/meter.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { useWidth } from '../../kit/useWidth.ts';
import { CellEditor } from './CellEditor.tsx';
import { ChartCellView } from './ChartCellView.tsx';
import { ChartPlayhead } from './ChartPlayhead.tsx';
import { type ChartCell, cellAt, type LaidChartBar } from './chartLayout.ts';
import type { PatternMarks } from './patternMarks.ts';
import { printedChart, type SlotNames } from './printedChart.ts';
import { useBarMarking } from './useBarMarking.ts';
import { useChangeDrag } from './useChangeDrag.ts';
import type { ChartWriting } from './useChartWriting.ts';
import { useGridActs } from './useGridActs.ts';

function BarHead({
  bar,
  isFirst,
  mark,
}: {
  readonly bar: LaidChartBar;
  readonly isFirst: boolean;
  readonly mark: string | undefined;
}) {
  return (
    <span className="chart-bar-head" aria-hidden="true">
      {isFirst && <span>{bar.bar + 1}</span>}
      {bar.printsMeter && <b>{formatMeter(bar.meter)}</b>}
      {mark !== undefined && <i className="chart-pattern-mark">{mark}</i>}
    </span>
  );
}

/**
 * The chart as a grid: a line of bars is a row, a felt beat a cell. A cell is tapped or typed into to
 * change its chord; a chord is dragged by its name to another beat, or moved with Control and the
 * arrows; bars are marked by dragging over their beats or with Shift and the arrows.
 */
export function ChartGrid({
  section,
  endingOf,
  place,
  replacedFrom,
  slotNames,
  marks,
  active,
  onActive,
  writing,
}: {
  readonly section: Section;
  /** The playing whose other ending this is, where it is not the section itself. */
  readonly endingOf?: FormEntryId;
  /** The playing that is shown, by its place in the form. */
  readonly place: number | undefined;
  /** The first bar that this playing does not play, as it ends otherwise. */
  readonly replacedFrom: number;
  readonly slotNames: SlotNames;
  readonly marks: PatternMarks;
  readonly active: Ticks;
  readonly onActive: (tick: Ticks) => void;
  readonly writing: ChartWriting;
}) {
  const grid = useRef<HTMLDivElement>(null);
  const width = useWidth(grid);
  const marking = useBarMarking(place);
  const chart = printedChart(section, slotNames, width);
  const { bars, lines } = chart;
  const activeCell = cellAt(bars, active) ?? bars[0]?.cells[0];
  const acts = useGridActs({ grid, chart, active: activeCell, onActive, marking, writing });
  const change = useChangeDrag(grid, chart, acts.moveChange);

  const dragOf = ({ startTick }: ChartCell) => {
    if (!change.drag) return undefined;
    if (change.drag.to === startTick) return 'to';
    return change.drag.from === startTick ? 'from' : undefined;
  };
  const isMarked = ({ bar }: LaidChartBar) =>
    marking.marked !== undefined && bar >= marking.marked.firstBar && bar < marking.marked.endBar;
  const editorIn = (cell: ChartCell) =>
    acts.editing?.tick === cell.startTick && (
      <CellEditor
        label={`Chord of bar ${cell.bar + 1}, beat ${cell.beat + 1}`}
        written={cell.slot === undefined ? '' : (slotNames.typed[cell.slot] ?? '')}
        typed={acts.editing.typed}
        commit={(text) => writing.write(cell, text)}
        onLeave={(leaving) => acts.leave(cell, leaving)}
      />
    );

  return (
    <div
      role="grid"
      tabIndex={-1}
      className="chart-grid"
      ref={grid}
      aria-label={`Chart of ${section.name}`}
      onKeyDown={acts.press}
      onKeyDownCapture={change.press}
      onClick={acts.tap}
      onPointerDown={(event) => {
        marking.pointer.onPointerDown(event);
        if (change.begin(event)) marking.pointer.onPointerCancel();
      }}
      onPointerMove={(event) => {
        if (change.move(event)) marking.asDrag();
        else marking.pointer.onPointerMove(event);
      }}
      onPointerUp={() => {
        change.end();
        marking.pointer.onPointerUp();
      }}
      onPointerCancel={() => {
        change.letGo();
        marking.pointer.onPointerCancel();
      }}
    >
      {lines.map((line, row) => (
        <div role="row" className="chart-line" key={line.bars[0]?.bar ?? row}>
          {line.bars.map((bar, i) => (
            <div
              role="presentation"
              key={bar.bar}
              className={bar.bar === bars.length - 1 ? 'chart-bar chart-bar-last' : 'chart-bar'}
              data-marked={isMarked(bar) || undefined}
              data-replaced={bar.bar >= replacedFrom || undefined}
              style={{ width: `${(100 * bar.lengthTicks) / line.spanTicks}%` }}
            >
              <BarHead bar={bar} isFirst={i === 0} mark={marks.get(bar.bar)} />
              {bar.cells.map((cell) => (
                <ChartCellView
                  key={cell.startTick}
                  cell={cell}
                  begins={chart.chordOf(row, cell)}
                  sounding={slotNames.names[cell.sounds] ?? ''}
                  bracket={chart.bracketOf(cell)}
                  mark={cell.beat === 0 ? marks.get(bar.bar) : undefined}
                  isActive={cell === activeCell}
                  drag={dragOf(cell)}
                  editor={editorIn(cell)}
                />
              ))}
            </div>
          ))}
        </div>
      ))}
      <ChartPlayhead sectionId={section.id} endingOf={endingOf} lines={lines} grid={grid} />
    </div>
  );
}
