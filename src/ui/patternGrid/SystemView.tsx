import type { Hit, Pattern } from '../../core/rhythm/pattern.ts';
import { CountRow } from './CountRow.tsx';
import { GridRow } from './GridRow.tsx';
import type { Chosen, Place } from './gridPlace.ts';
import type { Close } from './Rules.tsx';
import { type PlacedRow, type RowLayout, rowKey } from './rowLayout.ts';
import { SystemInk } from './SystemInk.tsx';
import type { System } from './systemLayout.ts';
import { BETWEEN_SYSTEMS } from './useGridLayout.ts';

type Props = {
  readonly system: System;
  readonly rows: RowLayout;
  readonly syllables: readonly string[];
  readonly pattern: Pattern;
  /** The one place that the tab key reaches. */
  readonly tabPlace: Place;
  readonly close: Close;
  readonly chosen: Chosen | undefined;
};

const NO_HITS: readonly Hit[] = [];

function barsName({ firstBar, bars }: System): string {
  return bars === 1 ? `Bar ${firstBar + 1}` : `Bars ${firstBar + 1} to ${firstBar + bars}`;
}

/** One system: its drawing, and over it the places of its rows. */
export function SystemView(props: Props) {
  const { system, rows, syllables, pattern, tabPlace, close, chosen } = props;
  const hasTab = system.steps.some(({ column }) => column === tabPlace.column);
  const rowView = (placed: PlacedRow, rowIndex: number) => {
    const { row } = placed;
    const key = rowKey(row);
    const tabColumn = hasTab && key === tabPlace.row ? tabPlace.column : undefined;
    const shared = { placed, system, bars: pattern.bars, syllables, rowIndex, tabColumn };
    if (row.kind === 'counts') return <CountRow key={key} {...shared} />;
    const hits = row.kind === 'hand' ? pattern[row.hand] : NO_HITS;
    return <GridRow key={key} {...shared} hits={hits} />;
  };
  return (
    <div
      role="rowgroup"
      aria-label={barsName(system)}
      data-system={system.firstBar}
      className="pattern-system"
      style={{ height: rows.height, marginBottom: BETWEEN_SYSTEMS }}
    >
      <SystemInk system={system} layout={rows} pattern={pattern} close={close} chosen={chosen} />
      {rows.rows.map(rowView)}
    </div>
  );
}
