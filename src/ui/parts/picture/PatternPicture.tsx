import { type ReactNode, useRef } from 'react';
import { type Pattern, patternTicks } from '../../../core/rhythm/pattern.ts';
import { CountFigures } from '../grid/CountFigures.tsx';
import { tiedInto } from '../grid/inSystem.ts';
import { Playhead } from '../grid/Playhead.tsx';
import { type PlacedRow, type RowLayout, rowKey, rowName } from '../grid/rowLayout.ts';
import { SystemInk } from '../grid/SystemInk.tsx';
import type { System } from '../grid/systemLayout.ts';
import { voiceRows } from '../grid/toneHeights.ts';
import { BETWEEN_SYSTEMS, useGridLayout } from '../grid/useGridLayout.ts';

function RowName({ row, top, height }: PlacedRow) {
  if (row.kind === 'counts') return null;
  const kind = row.kind === 'hand' ? row.hand : 'source';
  return (
    <div className={`pattern-row pattern-row-${kind}`} style={{ top, height }}>
      <span className="pattern-row-name">{rowName(row)}</span>
    </div>
  );
}

/** A pattern as it is drawn in the grid, only to be looked at, with the playhead while it is heard; `label` says what it shows. `over` draws over each system. */
export function PatternPicture({
  pattern,
  label,
  over,
}: {
  readonly pattern: Pattern;
  readonly label: string;
  readonly over?: (system: System, rows: RowLayout) => ReactNode;
}) {
  const { frame, systems, rows, syllables, least } = useGridLayout(pattern);
  const grid = useRef<HTMLDivElement>(null);
  const spine = rows.rows.find(({ row }) => row.kind === 'counts');
  return (
    <div
      ref={frame}
      role="img"
      aria-label={label}
      className="pattern-picture"
      style={{ minHeight: least }}
    >
      <div className="pattern-grid" ref={grid}>
        {systems.map((system) => (
          <div
            key={system.firstBar}
            className="pattern-system"
            data-system={system.firstBar}
            style={{ height: rows.height, marginBottom: BETWEEN_SYSTEMS }}
          >
            <SystemInk
              system={system}
              layout={rows}
              bars={pattern.bars}
              voices={voiceRows(pattern.right)}
              left={pattern.left}
              right={pattern.right}
              {...tiedInto(system, pattern, patternTicks(pattern))}
              roundTicks={patternTicks(pattern)}
              close="repeat"
              chosen={undefined}
            />
            {rows.rows.map((placed) => (
              <RowName key={rowKey(placed.row)} {...placed} />
            ))}
            {spine && (
              <div
                className="pattern-row pattern-picture-counts"
                style={{ top: spine.top, height: spine.height }}
              >
                <CountFigures steps={system.steps} syllables={syllables} left={0} />
              </div>
            )}
            {over?.(system, rows)}
          </div>
        ))}
        <Playhead pattern={pattern} systems={systems} height={rows.height} grid={grid} />
      </div>
    </div>
  );
}
