import { useRef } from 'react';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { useFrame } from '../../kit/useFrame.ts';
import type { RowLayout } from '../grid/rowLayout.ts';
import type { System } from '../grid/systemLayout.ts';
import { useParts } from '../tool/parts.ts';
import { usePlayback } from '../tool/useProject.ts';
import { type HitMark, hitMarks, markPath } from './hitMarks.ts';

const SVG = 'http://www.w3.org/2000/svg';

function markElement(mark: HitMark, y: number): SVGPathElement {
  const path = document.createElementNS(SVG, 'path');
  const ink = mark.isHandKnown ? mark.hand : 'hand-unknown';
  const grade = mark.grade ? `takes-grade-${mark.grade}` : '';
  path.setAttribute('class', `takes-mark takes-${mark.kind} takes-${ink} ${grade}`.trim());
  path.setAttribute('opacity', mark.isOld ? '0.4' : '1');
  path.setAttribute('d', markPath(mark, y));
  return path;
}

/** What was played, marked on the rules of the spine while a drill goes on; the last marks stay when it stops. */
export function HitMarks({
  pattern,
  system,
  rows,
}: {
  readonly pattern: Pattern;
  readonly system: System;
  readonly rows: RowLayout;
}) {
  const { takes } = useParts();
  const sheet = useRef<SVGSVGElement>(null);
  const drawn = useRef('');
  const playing = usePlayback();
  const isDrill = playing.status === 'playing' && playing.request.kind === 'drill';
  const spine = rows.rows.find(({ row }) => row.kind === 'counts');
  useFrame(isDrill, () => {
    const live = takes.live();
    if (!live || !sheet.current || !spine) return;
    const marks = hitMarks(live.hits, pattern, system);
    const paths = marks.map((mark) =>
      markElement(mark, mark.hand === 'right' ? spine.top : spine.top + spine.height),
    );
    const text = paths.map((path) => path.outerHTML).join('');
    if (text === drawn.current) return;
    drawn.current = text;
    sheet.current.replaceChildren(...paths);
  });
  return <svg ref={sheet} className="takes-marks" aria-hidden="true" focusable="false" />;
}
