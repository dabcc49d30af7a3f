import { useState } from 'react';
import type { PatternId } from '../../core/ids.ts';
import { keptBars } from '../../core/song/form.ts';
import { patternCourse } from '../../core/song/patternCourse.ts';
import type { FormEntry, Section } from '../../core/song/song.ts';
import type { Edit } from '../../state/edits/edit.ts';
import {
  clearPatternFrom,
  type PatternPlace,
  setPatternFrom,
} from '../../state/edits/sectionPatterns.ts';
import { courseShown } from '../parts/chart/patternMarks.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { PatternOptions } from './PatternField.tsx';

const [GOES_ON, RESTS] = ['goes on', 'rests'] as const;

function valueOf(id: PatternId): string {
  return `pattern ${id}`;
}

/** What a choice does at a bar; at the first one, what goes on is what the section begins with. */
function editFor(value: string, place: PatternPlace, bar: number, section: Section): Edit {
  if (value === RESTS) return setPatternFrom(place, bar, undefined);
  if (value !== GOES_ON) return setPatternFrom(place, bar, value.slice(valueOf('').length));
  return bar === 0 ? setPatternFrom(place, bar, section.patternId) : clearPatternFrom(place, bar);
}

/** What is chosen at a bar of a section or, with `entry`, of one playing of it. */
function chosenAt(section: Section, entry: FormEntry | undefined, bar: number): string {
  const course = entry ? courseShown(section, entry) : patternCourse(section);
  const change = course.find((each) => each.bar === bar);
  const isAsSection = entry && bar === 0 && change?.patternId === section.patternId;
  if (!change || isAsSection) return GOES_ON;
  return change.patternId === undefined ? RESTS : valueOf(change.patternId);
}

/**
 * What is played from the bar of the chart where one stands: every time or, where the section returns,
 * in this playing only.
 */
export function FromBarField({
  section,
  entry,
  bar,
  playing,
}: {
  readonly section: Section;
  /** The playing that is looked at; undefined where the section is not played. */
  readonly entry: FormEntry | undefined;
  /** The bar, counted from 0. */
  readonly bar: number;
  /** The name of that playing, “Verse 2”. */
  readonly playing: string;
}) {
  const { store } = useParts();
  const form = useProject((project) => project.song.form);
  const [isOwn, setOwn] = useState(
    entry?.patternId !== undefined || entry?.patternChanges !== undefined,
  );
  const returns = form.filter(({ sectionId }) => sectionId === section.id).length > 1;
  const isPlayed = entry !== undefined && returns && bar < keptBars(section, entry.ending);
  const own = isPlayed && isOwn ? entry : undefined;
  const place: PatternPlace = own
    ? { kind: 'playing', id: own.id }
    : { kind: 'section', id: section.id };
  return (
    <div className="songmap-from">
      <label>
        <span>From bar {bar + 1}</span>
        <select
          value={chosenAt(section, own, bar)}
          onChange={(event) =>
            store.edit(editFor(event.target.value, place, bar, section), {
              label: 'pattern from a bar on',
            })
          }
        >
          {bar > 0 && <option value={GOES_ON}>pattern as before</option>}
          {bar === 0 && own && <option value={GOES_ON}>the section’s own</option>}
          {(bar > 0 || !own) && <option value={RESTS}>none: hands rest</option>}
          <PatternOptions valueOf={valueOf} />
        </select>
      </label>
      {isPlayed && (
        <button type="button" aria-pressed={isOwn} onClick={() => setOwn(!isOwn)}>
          {playing} only
        </button>
      )}
    </div>
  );
}
