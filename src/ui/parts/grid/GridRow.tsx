import { memo } from 'react';
import type { Hit } from '../../../core/rhythm/pattern.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { sameProps } from '../../kit/sameProps.ts';
import { sourceName } from '../pattern/sourceNames.ts';
import { spokenHit, spokenStep, spokenStroke } from '../pattern/spokenPlace.ts';
import { hitOnStep, strokesOnStep } from './gridPlace.ts';
import { type PlacedRow, type Row, rowKey, rowName } from './rowLayout.ts';
import type { Pixels, PlacedStep, System } from './systemLayout.ts';

type Props = {
  readonly placed: PlacedRow;
  readonly system: System;
  readonly bars: number;
  readonly syllables: readonly string[];
  /** Hits of the row's hand; none where the row is a source's. */
  readonly hits: readonly Hit[];
  /** Those at the end of the round before, of so many ticks, that still sound here. */
  readonly tied: readonly Hit[];
  readonly roundTicks: Ticks;
  /** Column of the one cell that the tab key reaches, where it is in this row and system. */
  readonly tabColumn: number | undefined;
  readonly rowIndex: number;
};

type RowHits = Pick<Props, 'hits' | 'tied' | 'roundTicks'>;

function handWords({ hits, tied, roundTicks }: RowHits, step: PlacedStep): string {
  const hit = hitOnStep(hits, step);
  const over = tied.find(({ at, length }) => at + length - roundTicks > step.at);
  if (!hit) return over ? `tied over from the end: ${spokenHit(over)}` : 'empty';
  return hit.at < step.at ? `sounds on: ${spokenHit(hit)}` : spokenHit(hit);
}

/** What is read out of a place, and whether a stroke of the band stands there. */
function placeContent(
  row: Row,
  hits: RowHits,
  step: PlacedStep,
  system: System,
): { readonly words: string; readonly hasStroke: boolean } {
  if (row.kind !== 'source') return { words: handWords(hits, step), hasStroke: false };
  const stroke = strokesOnStep(row.source.strokes, step, system.steps)[0];
  return { words: stroke ? spokenStroke(stroke) : 'nothing', hasStroke: stroke !== undefined };
}

const Cell = memo(function Cell({
  row,
  column,
  label,
  left,
  width,
  isTab,
  hasStroke,
}: {
  readonly row: string;
  readonly column: number;
  readonly label: string;
  readonly left: Pixels;
  readonly width: Pixels;
  readonly isTab: boolean;
  readonly hasStroke: boolean;
}) {
  return (
    <div
      role="gridcell"
      tabIndex={isTab ? 0 : -1}
      aria-colindex={column + 1}
      aria-label={label}
      data-row={row}
      data-column={column}
      className={hasStroke ? 'pattern-cell pattern-cell-stroke' : 'pattern-cell'}
      style={{ left, width }}
    />
  );
});

/** The places of one row in one system, over its drawing: what is focused, tapped and read out. */
export const GridRow = memo(function GridRow(props: Props) {
  const { placed, system, bars, syllables, tabColumn, rowIndex } = props;
  const { row, top, height } = placed;
  const key = rowKey(row);
  const spoken = row.kind === 'source' ? sourceName(row.source) : rowName(row);
  return (
    <div
      role="row"
      aria-rowindex={rowIndex + 1}
      className={`pattern-row pattern-row-${row.kind === 'hand' ? row.hand : row.kind}`}
      style={{ top, height }}
    >
      <div role="rowheader" className="pattern-row-name" title={spoken}>
        {rowName(row)}
      </div>
      {system.steps.map((step) => {
        const { words, hasStroke } = placeContent(row, props, step, system);
        return (
          <Cell
            key={step.column}
            row={key}
            column={step.column}
            label={`${spoken}, ${spokenStep(step, syllables[step.column] ?? '', bars)}: ${words}`}
            left={step.x}
            width={step.width}
            isTab={step.column === tabColumn}
            hasStroke={hasStroke}
          />
        );
      })}
    </div>
  );
}, sameProps);
