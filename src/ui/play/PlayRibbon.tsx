import type { Ref } from 'react';
import type { BarRange } from '../../app/score.ts';
import type { SectionId } from '../../core/ids.ts';
import type { Wash } from '../../core/song/song.ts';
import type { Timeline } from '../../core/song/timeline.ts';
import { markedInEntry, playingName } from '../parts/song/marking.ts';

/**
 * The form as a row of blocks to be tapped: what plays now stands out and fills up, what comes by a
 * jump is dotted, what is marked for playing lies under a bracket. `ref` gives the list of blocks.
 */
export function PlayRibbon({
  timeline,
  washOf,
  range,
  wanted,
  onChoose,
  ref,
}: {
  readonly timeline: Timeline;
  readonly washOf: (sectionId: SectionId) => Wash;
  readonly range: BarRange | undefined;
  /** The place of the form that a jump leads to. */
  readonly wanted: number | undefined;
  readonly onChoose: (place: number) => void;
  readonly ref: Ref<HTMLOListElement>;
}) {
  return (
    <ol className="practice-ribbon" ref={ref} aria-label="Sections in playing order">
      {timeline.sections.map((span, place) => {
        const marked = markedInEntry(timeline, place, range) !== undefined;
        return (
          <li
            key={span.startTick}
            style={{ flexGrow: span.bars }}
            data-marked={marked || undefined}
          >
            <button
              type="button"
              className={`practice-block wash-${washOf(span.sectionId)}`}
              data-wanted={place === wanted || undefined}
              onClick={() => onChoose(place)}
            >
              <span>{playingName(timeline, place)}</span>
              {marked && <span className="visually-hidden">, marked for playing</span>}
            </button>
          </li>
        );
      })}
    </ol>
  );
}
