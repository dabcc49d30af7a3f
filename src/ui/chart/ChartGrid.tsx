import { type KeyboardEvent, type MouseEvent, useRef, useState } from 'react';
import type { Section } from '../../core/song/song.ts';
import { formatMeter } from '../../core/time/meter.ts';
import type { Ticks } from '../../core/time/ticks.ts';
import { useWidth } from '../useWidth.ts';
import { CellEditor, type Leaving } from './CellEditor.tsx';
import { ChartCellView, type PrintedChord } from './ChartCellView.tsx';
import { ChartPlayhead } from './ChartPlayhead.tsx';
import {
  barsPerLine,
  CHORD_PX,
  type ChartBar,
  type ChartCell,
  cellAt,
  chartBars,
  chartLines,
  chordSizes,
  longestLineTicks,
  slotBeats,
} from './chartLayout.ts';
import { cellMoved } from './gridMoves.ts';
import { useBarMarking } from './useBarMarking.ts';
import type { ChartWriting } from './useChartWriting.ts';

/** Keys that begin a chord's name: a letter, a numeral, a figure or a sign. */
const BEGINS_NAME = /^[A-Ga-gIVivN1-7♭♯#]$/;

type Editing = { readonly tick: Ticks; readonly initial: string; readonly isTyped: boolean };

/** Names of the section's chords, by slot: the chosen naming and the one below. */
export type SlotNames = { readonly names: readonly string[]; readonly below: readonly string[] };

function BarHead({ bar, isFirst }: { readonly bar: ChartBar; readonly isFirst: boolean }) {
  return (
    <span className="chart-bar-head" aria-hidden="true">
      {isFirst && <span>{bar.bar + 1}</span>}
      {bar.printsMeter && <b>{formatMeter(bar.meter)}</b>}
    </span>
  );
}

/**
 * The chart as a grid: a line of bars is a row, a felt beat a cell. A cell is tapped or typed into to
 * change its chord; bars are marked by dragging over them or with Shift and the arrows.
 */
export function ChartGrid({
  section,
  place,
  slotNames,
  active,
  onActive,
  writing,
}: {
  readonly section: Section;
  /** The playing that is shown, by its place in the form. */
  readonly place: number | undefined;
  readonly slotNames: SlotNames;
  readonly active: Ticks;
  readonly onActive: (tick: Ticks) => void;
  readonly writing: ChartWriting;
}) {
  const grid = useRef<HTMLDivElement>(null);
  const width = useWidth(grid);
  const [editing, setEditing] = useState<Editing>();
  const marking = useBarMarking(place);
  const bars = chartBars(section);
  const lines = chartLines(bars, barsPerLine(bars, slotNames.names, width));
  const beats = slotBeats(bars);
  const pxPerTick = width / longestLineTicks(lines);
  const activeCell = cellAt(bars, active) ?? bars[0]?.cells[0];

  const focusCell = (tick: Ticks) => {
    onActive(tick);
    grid.current?.querySelector<HTMLElement>(`[data-tick="${tick}"]`)?.focus();
  };
  const openEditor = (cell: ChartCell, typed?: string) => {
    onActive(cell.startTick);
    const written = cell.slot === undefined ? '' : (slotNames.names[cell.slot] ?? '');
    setEditing({
      tick: cell.startTick,
      initial: typed ?? written,
      isTyped: typed !== undefined,
    });
  };
  const leaveEditor = (cell: ChartCell, leaving: Leaving) => {
    setEditing(undefined);
    if (leaving === 'elsewhere') return;
    const key = { stay: '', next: 'ArrowRight', before: 'ArrowLeft' }[leaving];
    focusCell((cellMoved(lines, cell, { key, ctrlKey: false }) ?? cell).startTick);
  };

  const mark = (cell: ChartCell, key: string): boolean => {
    const perLine = lines[0]?.length ?? 1;
    const by = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -perLine, ArrowDown: perLine }[key];
    const bar = by === undefined ? undefined : bars[cell.bar + by];
    if (!bar) return by !== undefined;
    marking.markTo(bar.bar);
    focusCell(bar.startTick);
    return true;
  };

  const act = (cell: ChartCell, event: KeyboardEvent): boolean => {
    const { key, shiftKey, ctrlKey, metaKey, altKey } = event;
    if (shiftKey && key.startsWith('Arrow')) return mark(cell, key);
    if (ctrlKey && (key === 'ArrowLeft' || key === 'ArrowRight')) {
      const to = cellMoved(lines, cell, { key, ctrlKey: false });
      if (to && writing.move(cell.startTick, to.startTick)) focusCell(to.startTick);
      return true;
    }
    const moved = cellMoved(lines, cell, { key, ctrlKey });
    if (moved) {
      focusCell(moved.startTick);
      marking.beginAt(moved.bar);
      return true;
    }
    if (key === 'Enter' || key === 'F2') openEditor(cell);
    else if (key === 'Delete' || key === 'Backspace') writing.write(cell, '');
    else if (BEGINS_NAME.test(key) && !ctrlKey && !metaKey && !altKey) openEditor(cell, key);
    else return false;
    return true;
  };

  const press = (event: KeyboardEvent) => {
    if (activeCell && act(activeCell, event)) event.preventDefault();
  };
  const tap = (event: MouseEvent) => {
    const tapped = event.target instanceof Element && event.target.closest('[data-tick]');
    if (!tapped || marking.wasDrag() || event.target instanceof HTMLInputElement) return;
    const cell = cellAt(bars, Number(tapped.getAttribute('data-tick')));
    if (!cell) return;
    const broken = grid.current?.querySelector<HTMLElement>('[aria-invalid=true]');
    if (broken) broken.focus();
    else {
      marking.beginAt(cell.bar);
      openEditor(cell);
    }
  };

  const sizes = lines.map((line) => chordSizes(line, slotNames.names, pxPerTick));
  const printed = (row: number, { slot }: ChartCell): PrintedChord | undefined =>
    slot === undefined
      ? undefined
      : {
          name: slotNames.names[slot] ?? '',
          below: slotNames.below[slot] ?? '',
          beats: beats[slot] ?? 1,
          sizePx: sizes[row]?.get(slot) ?? CHORD_PX.usual,
        };
  const isMarked = ({ bar }: ChartBar) =>
    marking.marked !== undefined && bar >= marking.marked.firstBar && bar < marking.marked.endBar;

  return (
    <div
      role="grid"
      tabIndex={-1}
      className="chart-grid"
      ref={grid}
      aria-label={`Chart of ${section.name}`}
      onKeyDown={press}
      onClick={tap}
      {...marking.pointer}
    >
      {lines.map((line, row) => (
        <div role="row" className="chart-line" key={line[0]?.bar ?? row}>
          {line.map((bar, i) => (
            <div
              role="presentation"
              key={bar.bar}
              className={bar.bar === bars.length - 1 ? 'chart-bar chart-bar-last' : 'chart-bar'}
              data-marked={isMarked(bar) || undefined}
              style={{ width: `${(100 * bar.lengthTicks) / longestLineTicks(lines)}%` }}
            >
              <BarHead bar={bar} isFirst={i === 0} />
              {bar.cells.map((cell) => (
                <ChartCellView
                  key={cell.startTick}
                  cell={cell}
                  begins={printed(row, cell)}
                  sounding={slotNames.names[cell.sounds] ?? ''}
                  isActive={cell === activeCell}
                  editor={
                    editing?.tick === cell.startTick && (
                      <CellEditor
                        label={`Chord of bar ${cell.bar + 1}, beat ${cell.beat + 1}`}
                        initial={editing.initial}
                        isTyped={editing.isTyped}
                        commit={(text) => writing.write(cell, text)}
                        onLeave={(leaving) => leaveEditor(cell, leaving)}
                      />
                    )
                  }
                />
              ))}
            </div>
          ))}
        </div>
      ))}
      <ChartPlayhead sectionId={section.id} lines={lines} grid={grid} />
    </div>
  );
}
