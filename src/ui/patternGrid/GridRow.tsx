import { memo } from 'react';
import type { Hit } from '../../core/rhythm/pattern.ts';
import type { Source } from '../../core/rhythm/sources.ts';
import { hitOnStep, strokesOnStep } from './gridPlace.ts';
import { type PlacedRow, rowKey, rowName } from './rowLayout.ts';
import { sameProps } from './sameProps.ts';
import { sourceName } from './sourceNames.ts';
import { spokenHit, spokenStep, spokenStroke } from './spokenPlace.ts';
import type { Pixels, PlacedStep, System } from './systemLayout.ts';

type Props = {
  readonly placed: PlacedRow;
  readonly system: System;
  readonly bars: number;
  readonly syllables: readonly string[];
  /** Hits of the row's hand; none where the row is a source's. */
  readonly hits: readonly Hit[];
  /** Column of the one cell that the tab key reaches, where it is in this row and system. */
  readonly tabColumn: number | undefined;
  readonly rowIndex: number;
};

function handWords(hits: readonly Hit[], step: PlacedStep): string {
  const hit = hitOnStep(hits, step);
  if (!hit) return 'empty';
  return hit.at < step.at ? `sounds on: ${spokenHit(hit)}` : spokenHit(hit);
}

function sourceWords(source: Source, step: PlacedStep, system: System): string {
  const strokes = strokesOnStep(source.strokes, step, system.steps);
  return strokes[0] ? spokenStroke(strokes[0]) : 'nothing';
}

const Cell = memo(function Cell({
  row,
  column,
  label,
  left,
  width,
  isTab,
}: {
  readonly row: string;
  readonly column: number;
  readonly label: string;
  readonly left: Pixels;
  readonly width: Pixels;
  readonly isTab: boolean;
}) {
  return (
    <div
      role="gridcell"
      tabIndex={isTab ? 0 : -1}
      aria-colindex={column + 1}
      aria-label={label}
      data-row={row}
      data-column={column}
      className="pattern-cell"
      style={{ left, width }}
    />
  );
});

/** The places of one row in one system, over its drawing: what is focused, tapped and read out. */
export const GridRow = memo(function GridRow(props: Props) {
  const { placed, system, bars, syllables, hits, tabColumn, rowIndex } = props;
  const { row, top, height } = placed;
  const key = rowKey(row);
  const spoken = row.kind === 'source' ? sourceName(row.source) : rowName(row);
  const words = (step: PlacedStep) =>
    row.kind === 'source' ? sourceWords(row.source, step, system) : handWords(hits, step);
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
      {system.steps.map((step) => (
        <Cell
          key={step.column}
          row={key}
          column={step.column}
          label={`${spoken}, ${spokenStep(step, syllables[step.column] ?? '', bars)}: ${words(step)}`}
          left={step.x}
          width={step.width}
          isTab={step.column === tabColumn}
        />
      ))}
    </div>
  );
}, sameProps);
