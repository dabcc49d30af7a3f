import { useRef } from 'react';
import { type Pattern, patternBeats, patternTicks } from '../../../core/rhythm/pattern.ts';
import type { Stroke } from '../../../core/rhythm/sources.ts';
import { useWidth } from '../../kit/useWidth.ts';
import type { Pixels } from '../../parts/grid/systemLayout.ts';

type Props = {
  readonly grid: Pick<Pattern, 'meter' | 'bars' | 'divisions'>;
  /** Where taps lie, in ticks, over as many rounds as there were. */
  readonly places: readonly number[];
  /** What they came to; none while they are being made. */
  readonly strokes: readonly Stroke[];
};

const HEIGHT: Pixels = 44;
const TAP: Pixels = 20;
const LEAN: Pixels = 3;
const FIGURES: Pixels = 14;

/** A strip of the pattern's beats with every tap where it fell, and under them what they came to. */
export function TapStrip({ grid, places, strokes }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const total = patternTicks(grid);
  const x = (tick: number) => ((((tick % total) + total) % total) / total) * width;
  const foot = HEIGHT - FIGURES;
  return (
    <div ref={frame} className="desk-strip">
      <svg width={width} height={HEIGHT} aria-hidden="true" focusable="false">
        <path className="workshop-spine" d={`M0 ${foot}H${width}`} />
        {patternBeats(grid).map(({ start, beat }) => (
          <g key={start}>
            <path
              className={beat === 0 ? 'workshop-bar-line' : 'workshop-spine'}
              d={`M${x(start)} 0V${HEIGHT}`}
            />
            <text className="workshop-count" x={x(start) + 4} y={HEIGHT - 1}>
              {beat + 1}
            </text>
          </g>
        ))}
        {places.map((place, i) => (
          <path
            key={`${i} ${place}`}
            className="desk-tap"
            d={`M${x(place)} ${foot}l${LEAN} ${-TAP}`}
          />
        ))}
        {strokes.map(({ at, strength }) => (
          <path
            key={at}
            className="desk-found"
            strokeWidth={strength > 0.8 ? 6 : 3.5}
            d={`M${x(at) + 2} ${foot}l${LEAN} ${-foot}`}
          />
        ))}
      </svg>
    </div>
  );
}
