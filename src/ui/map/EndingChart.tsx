import { useMemo, useState } from 'react';
import type { FormEntryId } from '../../core/ids.ts';
import { playedChart, sectionBars } from '../../core/song/form.ts';
import type { OtherEnding, Section } from '../../core/song/song.ts';
import { ChartGrid } from '../parts/chart/ChartGrid.tsx';
import type { PatternMarks } from '../parts/chart/patternMarks.ts';
import { useEndingWriting } from '../parts/chart/useChartWriting.ts';
import { useSlotNames } from '../parts/chart/useSlotNames.ts';
import { useSectionAnalysis } from './useSectionAnalysis.ts';

function placeWords(replacesBars: number): string {
  if (replacesBars === 0) return 'after its last bar';
  return replacesBars === 1
    ? 'in place of its last bar'
    : `in place of its last ${replacesBars} bars`;
}

/** The other ending of one playing, beat by beat as the section's own chart; its chords are understood where they stand. */
export function EndingChart({
  section,
  entryId,
  ending,
  marks,
  playing,
}: {
  readonly section: Section;
  readonly entryId: FormEntryId;
  readonly ending: OtherEnding;
  /** Where in the ending another pattern begins. */
  readonly marks: PatternMarks;
  /** The name of the playing, “Verse 2”. */
  readonly playing: string;
}) {
  const { slots, barMeters, replacesBars } = ending;
  const [active, setActive] = useState(0);
  const part = { ...section, name: `the ending of ${playing}`, slots, barMeters };
  const played = useMemo(
    () => ({ ...section, slots: playedChart(section, ending).slots }),
    [section, ending],
  );
  const analysed = useSectionAnalysis(played).slice(-slots.length);
  const slotNames = useSlotNames(part, analysed);
  const bars = sectionBars(part).length;
  const writing = useEndingWriting(part, entryId, replacesBars);
  return (
    <section
      className="chart-ending"
      data-short={bars <= 2 || undefined}
      aria-label={`Ending of ${playing}`}
    >
      <p>
        {playing} ends with this, {placeWords(replacesBars)}:
      </p>
      <ChartGrid
        section={part}
        endingOf={entryId}
        place={undefined}
        replacedFrom={Infinity}
        slotNames={slotNames}
        marks={marks}
        active={active}
        onActive={setActive}
        writing={writing}
      />
    </section>
  );
}
