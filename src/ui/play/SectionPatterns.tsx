import '../parts/picture/workshop.css';
import { type Ref, useMemo, useRef } from 'react';
import type { Timeline } from '../../core/song/timeline.ts';
import { selectPatternAt } from '../../state/selectors.ts';
import { useWidth } from '../kit/useWidth.ts';
import { RhythmPicture } from '../parts/picture/RhythmPicture.tsx';
import { patternsInForm } from '../parts/transport/follow.ts';
import { useArranged } from './useArranged.ts';

/** How much larger than on the shelf a picture is, to be read from the stand; the style sheet does the same. */
const ENLARGED = 1.5;

/** The hands of every pattern that the song plays, small; the page shows the one of the bar that is heard. `ref` gives their list. */
export function SectionPatterns({
  timeline,
  ref,
}: {
  readonly timeline: Timeline;
  readonly ref: Ref<HTMLDivElement>;
}) {
  const patternAt = useArranged(selectPatternAt);
  const shown = useMemo(() => patternsInForm(timeline, patternAt), [timeline, patternAt]);
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  return (
    <div className="practice-patterns" ref={frame}>
      <div ref={ref}>
        {shown.map(({ pattern, bars }) => (
          <figure key={pattern.id} data-bars={bars.join(' ')}>
            <figcaption className="practice-pattern-name">{pattern.name}</figcaption>
            {width > 0 && <RhythmPicture pattern={pattern} width={Math.floor(width / ENLARGED)} />}
          </figure>
        ))}
      </div>
    </div>
  );
}
