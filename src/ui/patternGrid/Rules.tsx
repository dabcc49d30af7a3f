import type { PlacedRow, RowLayout } from './rowLayout.ts';
import type { Pixels, System } from './systemLayout.ts';

/** Bar lines of a system as the x of each, the last one included. */
function barLines(system: System): Pixels[] {
  const width = (system.right - system.left) / system.bars;
  return Array.from({ length: system.bars + 1 }, (_, i) => system.left + i * width);
}

/** How far outside the music the thin line, the thick line and the dots of a repeat sign stand. */
const REPEAT = { dots: 4, thin: 10, thick: 16 } as const;

/** A repeat sign at the beginning (`outwards` −1) or the end (1) of the pattern. */
function RepeatSign({
  x,
  outwards,
  spine,
  height,
}: {
  readonly x: Pixels;
  readonly outwards: 1 | -1;
  readonly spine: PlacedRow;
  readonly height: Pixels;
}) {
  const at = (distance: number) => x + outwards * distance;
  const third = spine.height / 3;
  return (
    <>
      <circle className="pattern-repeat" cx={at(REPEAT.dots)} cy={spine.top + third} r={3} />
      <circle className="pattern-repeat" cx={at(REPEAT.dots)} cy={spine.top + 2 * third} r={3} />
      <path className="pattern-bar-line" d={`M${at(REPEAT.thin)} 0V${height}`} />
      <path className="pattern-thick-line" d={`M${at(REPEAT.thick)} 0V${height}`} />
    </>
  );
}

/** Ink rules of a system: bar lines through everything, faint beat lines, two rules along the spine, repeat signs at the ends. */
export function Rules({
  system,
  layout,
  bars,
}: {
  readonly system: System;
  readonly layout: RowLayout;
  readonly bars: number;
}) {
  const spine = layout.rows.find(({ row }) => row.kind === 'counts');
  if (!spine) return null;
  const { height } = layout;
  const [top, bottom] = [spine.top, spine.top + spine.height];
  const beats = system.steps.filter(({ index, beat }) => index === 0 && beat.beat > 0);
  const isFirst = system.firstBar === 0;
  const isLast = system.firstBar + system.bars === bars;
  const lines = barLines(system).slice(isFirst ? 1 : 0, isLast ? -1 : undefined);
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
      {isFirst && <RepeatSign x={system.left} outwards={-1} spine={spine} height={height} />}
      {isLast && <RepeatSign x={system.right} outwards={1} spine={spine} height={height} />}
    </g>
  );
}
