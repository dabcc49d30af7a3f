import { memo } from 'react';
import type { Pattern, Touch } from '../../../core/rhythm/pattern.ts';
import type { Pixels } from '../grid/systemLayout.ts';
import { type PictureMark, pictureOf } from './rhythmPicture.ts';

/** Breadth of the pen for each touch. */
const PEN: Readonly<Record<Touch, Pixels>> = { ghost: 1.6, plain: 3.4, accent: 5.4 };

/** How far a tick leans. */
const LEAN: Pixels = 2;

/** What sounds on fades: so high at the attack, so high at its end. */
const TAIL = { from: 4, to: 0.8 } as const;

function Mark({ mark }: { readonly mark: PictureMark }) {
  const { hand, touch, x, top, bottom, end } = mark;
  const pen = PEN[touch];
  const height = bottom - top;
  const middle = (top + bottom) / 2;
  return (
    <g className={`workshop-mark workshop-${hand}`}>
      {end > x + pen + LEAN && (
        <path
          d={`M${x + pen} ${middle - TAIL.from / 2}L${end} ${middle - TAIL.to / 2}v${TAIL.to}L${x + pen} ${middle + TAIL.from / 2}z`}
        />
      )}
      <path d={`M${x} ${bottom}l${LEAN} ${-height}h${pen}l${-LEAN} ${height}z`} />
    </g>
  );
}

/** A pattern drawn small, `width` pixels wide: the counts, and over and under them what the hands strike. */
export const RhythmPicture = memo(function RhythmPicture({
  pattern,
  width,
}: {
  readonly pattern: Pattern;
  readonly width: Pixels;
}) {
  const { height, spine, barLines, counts, marks } = pictureOf(pattern, width);
  return (
    <svg
      className="workshop-picture"
      width={width}
      height={height}
      aria-hidden="true"
      focusable="false"
    >
      <path className="workshop-spine" d={`M0 ${spine.top}H${width}M0 ${spine.bottom}H${width}`} />
      {barLines.slice(1, -1).map((x) => (
        <path key={x} className="workshop-bar-line" d={`M${x} 0V${height}`} />
      ))}
      {counts.map(({ x, text, isBeat }) => (
        <text
          key={x}
          className={isBeat ? 'workshop-count' : 'workshop-count workshop-syllable'}
          x={x}
          y={spine.middle}
          dy="0.34em"
        >
          {text}
        </text>
      ))}
      {marks.map((mark) => (
        <Mark key={`${mark.hand} ${mark.x}`} mark={mark} />
      ))}
    </svg>
  );
});
