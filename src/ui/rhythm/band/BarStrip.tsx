import { type PointerEvent, useMemo, useRef } from 'react';
import type { Band } from '../../../core/rhythm/band.ts';
import { AGREEING } from '../../../core/rhythm/foldAgreement.ts';
import type { BandBars } from '../../../core/rhythm/strokes.ts';
import { barAtShare, rangeBetween, stripBars } from './barStrip.ts';

type Props = {
  readonly band: Band;
  readonly chosen: BandBars;
  /** The steadiest bars, as they were found. */
  readonly steadiest: BandBars;
  readonly agreement: readonly number[];
  readonly onRange: (range: BandBars) => void;
};

const HEIGHT = 46;

/** The whole piece bar by bar: how full each is, which are chosen, which of those agree. A drag chooses bars. */
export function BarStrip({ band, chosen, steadiest, agreement, onRange }: Props) {
  const from = useRef<number>(undefined);
  const bars = useMemo(
    () => stripBars(band, chosen, agreement, AGREEING),
    [band, chosen, agreement],
  );
  const barUnder = ({ currentTarget, clientX }: PointerEvent) => {
    const { left, width } = currentTarget.getBoundingClientRect();
    return barAtShare(bars.length, (clientX - left) / width);
  };
  return (
    <svg
      className="band-strip"
      viewBox={`0 0 ${bars.length} ${HEIGHT}`}
      preserveAspectRatio="none"
      role="img"
      aria-label={`Steadiest are bars ${steadiest.firstBar + 1} to ${steadiest.lastBar + 1}`}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        from.current = barUnder(event);
      }}
      onPointerMove={(event) => {
        if (from.current !== undefined) onRange(rangeBetween(from.current, barUnder(event)));
      }}
      onPointerUp={() => {
        from.current = undefined;
      }}
      onPointerCancel={() => {
        from.current = undefined;
      }}
    >
      {bars.map(({ fullness, state }, bar) => {
        const height = 4 + fullness * (HEIGHT - 14);
        return (
          <rect
            key={bar}
            className={`band-bar-${state}`}
            x={bar + 0.12}
            y={HEIGHT - 8 - height}
            width={0.76}
            height={height}
          />
        );
      })}
      <rect
        className="band-steadiest"
        x={steadiest.firstBar}
        y={HEIGHT - 5}
        width={steadiest.lastBar - steadiest.firstBar + 1}
        height={4}
      />
    </svg>
  );
}
