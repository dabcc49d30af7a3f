import { memo } from 'react';
import type { Hit, LeftHit, RightHit } from '../../../core/rhythm/pattern.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { sameProps } from '../../kit/sameProps.ts';
import { CountRow } from './CountRow.tsx';
import { GridRow } from './GridRow.tsx';
import type { Chosen, Place } from './gridPlace.ts';
import type { Tied } from './inSystem.ts';
import type { Close } from './Rules.tsx';
import { type PlacedRow, type RowLayout, rowKey } from './rowLayout.ts';
import { SystemInk } from './SystemInk.tsx';
import type { System } from './systemLayout.ts';
import { BETWEEN_SYSTEMS } from './useGridLayout.ts';

type Props = Tied & {
  readonly system: System;
  readonly rows: RowLayout;
  readonly syllables: readonly string[];
  /** Bars of the whole pattern, and the voices that its right hand is drawn in (`voiceRows`). */
  readonly bars: number;
  readonly voices: number;
  /** What the hands play in this system, and what of the rest is in it. */
  readonly left: readonly LeftHit[];
  readonly right: readonly RightHit[];
  /** How long a round is, out of which something may be tied over into the system. */
  readonly roundTicks: Ticks;
  readonly chosen: Chosen | undefined;
  /** The one place that the tab key reaches. */
  readonly tabPlace: Place | undefined;
  readonly close: Close;
};

const NO_HITS: readonly Hit[] = [];
const NO_CONTENT = { hits: NO_HITS, tied: NO_HITS };

function barsName({ firstBar, bars }: System): string {
  return bars === 1 ? `Bar ${firstBar + 1}` : `Bars ${firstBar + 1} to ${firstBar + bars}`;
}

/** One system: its drawing, and over it the places of its rows. It is drawn again only for what happens in it. */
export const SystemView = memo(function SystemView(props: Props) {
  const { system, rows, syllables, bars, voices, left, right, tabPlace, close, chosen } = props;
  const { tiedLeft, tiedRight, roundTicks } = props;
  const hands = {
    left: { hits: left, tied: tiedLeft },
    right: { hits: right, tied: tiedRight },
  };
  const rowView = (placed: PlacedRow, rowIndex: number) => {
    const { row } = placed;
    const key = rowKey(row);
    const tabColumn = key === tabPlace?.row ? tabPlace.column : undefined;
    const shared = { placed, system, bars, syllables, rowIndex, tabColumn };
    const content = row.kind === 'hand' ? hands[row.hand] : NO_CONTENT;
    if (row.kind === 'counts') return <CountRow key={key} {...shared} />;
    return <GridRow key={key} {...shared} {...content} roundTicks={roundTicks} />;
  };
  return (
    <div
      role="rowgroup"
      aria-label={barsName(system)}
      data-system={system.firstBar}
      className="pattern-system"
      style={{ height: rows.height, marginBottom: BETWEEN_SYSTEMS }}
    >
      <SystemInk
        system={system}
        layout={rows}
        bars={bars}
        voices={voices}
        left={left}
        right={right}
        tiedLeft={tiedLeft}
        tiedRight={tiedRight}
        roundTicks={roundTicks}
        close={close}
        chosen={chosen}
      />
      {rows.rows.map(rowView)}
    </div>
  );
}, sameProps);
