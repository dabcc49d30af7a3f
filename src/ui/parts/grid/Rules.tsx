import { memo } from 'react';
import type { PlacedRow, RowLayout } from './rowLayout.ts';
import type { Pixels, System } from './systemLayout.ts';

/** Bar lines of a system as the x of each, the last one included. */
function barLines(system: System): Pixels[] {
  const width = (system.right - system.left) / system.bars;
  return Array.from({ length: system.bars + 1 }, (_, i) => system.left + i * width);
}

/** How the shown bars end: again and again from the beginning, or for good. */
export type Close = 'repeat' | 'final';

/** How far outside the music the dots, the thin and the thick line of its first and last bar lines stand. */
const OUTSIDE = { dots: 4, thin: 10, thick: 16 } as const;

/** The double bar line at the beginning (`outwards` −1) or the end (1); with the dots of a repeat sign beside the spine. */
function DoubleBar({
  x,
  outwards,
  close,
  spine,
  height,
}: {
  readonly x: Pixels;
  readonly outwards: 1 | -1;
  readonly close: Close;
  readonly spine: PlacedRow;
  readonly height: Pixels;
}) {
  const at = (distance: number) => x + outwards * distance;
  const thirds = close === 'repeat' ? [1, 2] : [];
  return (
    <>
      {thirds.map((third) => (
        <circle
          key={third}
          className="pattern-repeat"
          cx={at(OUTSIDE.dots)}
          cy={spine.top + (third * spine.height) / 3}
          r={3}
        />
      ))}
      <path className="pattern-bar-line" d={`M${at(OUTSIDE.thin)} 0V${height}`} />
      <path className="pattern-thick-line" d={`M${at(OUTSIDE.thick)} 0V${height}`} />
    </>
  );
}

/** Ink rules of a system: bar lines through everything, faint beat lines, two rules along the spine, and how it closes. */
export const Rules = memo(function Rules({
  system,
  layout,
  bars,
  close,
}: {
  readonly system: System;
  readonly layout: RowLayout;
  readonly bars: number;
  readonly close: Close;
}) {
  const spine = layout.rows.find(({ row }) => row.kind === 'counts');
  if (!spine) return null;
  const { height } = layout;
  const [top, bottom] = [spine.top, spine.top + spine.height];
  const beats = system.steps.filter(({ index, beat }) => index === 0 && beat.beat > 0);
  const opens = system.firstBar === 0 && close === 'repeat';
  const closes = system.firstBar + system.bars === bars;
  const lines = barLines(system).slice(opens ? 1 : 0, closes ? -1 : undefined);
  const ends = { close, spine, height };
  return (
    <g className="pattern-rules">
      {beats.map(({ at, x }) => (
        <path key={at} className="pattern-beat-line" d={`M${x} 0V${height}`} />
      ))}
      {lines.map((x) => (
        <path key={x} className="pattern-bar-line" d={`M${x} 0V${height}`} />
      ))}
      <path
        className="pattern-spine-line"
        d={`M${system.left} ${top}H${system.right}M${system.left} ${bottom}H${system.right}`}
      />
      {opens && <DoubleBar x={system.left} outwards={-1} {...ends} />}
      {closes && <DoubleBar x={system.right} outwards={1} {...ends} />}
    </g>
  );
});
