import { memo } from 'react';
import type { Source, Stroke, StrokeTone } from '../../../core/rhythm/sources.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { toneName } from '../pattern/toneNames.ts';
import { type Pixels, type System, tickX } from './systemLayout.ts';

/** Faintest and darkest that a stroke of the band is drawn. */
const DARKNESS = { least: 0.45, most: 1 } as const;

/** Sources whose strokes say what they play; drums do not. */
const PITCHED = ['bass', 'picking', 'sung'];

/** How dark a stroke is: the stronger and the more often it is played, the darker. */
export function strokeDarkness({ strength, presence }: Stroke): number {
  const weight = Math.min(Math.max(strength * presence, 0), 1);
  return DARKNESS.least + weight * (DARKNESS.most - DARKNESS.least);
}

function mark(tone: StrokeTone | undefined): string {
  return tone === undefined || tone === 'unpitched' || tone === 'all' ? '' : toneName(tone).mark;
}

/** One source of the band: a pen tick for each stroke, with its degree where that is known. */
export const LaneInk = memo(function LaneInk({
  system,
  source,
  top,
  height,
  chosenAt,
}: {
  readonly system: System;
  readonly source: Source;
  readonly top: Pixels;
  readonly height: Pixels;
  readonly chosenAt: Ticks | undefined;
}) {
  const foot = top + height - 4;
  const inSystem = source.strokes.filter(({ at }) => at >= system.fromTick && at < system.toTick);
  return inSystem.map((stroke) => {
    const x = tickX(system, stroke.at) + 3;
    const rise = (height - 7) * (0.55 + 0.45 * stroke.strength);
    return (
      <g key={stroke.at} className="pattern-stroke">
        <path opacity={strokeDarkness(stroke)} d={`M${x} ${foot}l3 ${-rise}h4l-3 ${rise}z`} />
        {PITCHED.includes(source.part) && (
          <text x={x + 11} y={foot}>
            {mark(stroke.what[0])}
          </text>
        )}
        {stroke.at === chosenAt && (
          <circle
            className="pattern-selected"
            cx={x + 4}
            cy={foot - height / 2 + 4}
            r={height / 2}
          />
        )}
      </g>
    );
  });
});
