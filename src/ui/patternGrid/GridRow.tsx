import { memo } from 'react';
import type { Hit } from '../../core/rhythm/pattern.ts';
import type { Source } from '../../core/rhythm/sources.ts';
import { hitOnStep, strokesOnStep } from './gridPlace.ts';
import { type PlacedRow, rowKey, rowName } from './rowLayout.ts';
import { sourceName } from './sourceNames.ts';
import { spokenHit, spokenStep, spokenStroke } from './spokenPlace.ts';
import type { PlacedStep, System } from './systemLayout.ts';

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
        <div
          key={step.column}
          role="gridcell"
          tabIndex={step.column === tabColumn ? 0 : -1}
          aria-colindex={step.column + 1}
          aria-label={`${spoken}, ${spokenStep(step, syllables[step.column] ?? '', bars)}: ${words(step)}`}
          data-row={key}
          data-column={step.column}
          className="pattern-cell"
          style={{ left: step.x, width: step.width }}
        />
      ))}
    </div>
  );
});
