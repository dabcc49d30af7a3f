import { useState } from 'react';
import { formatChartBars, parseChartBars } from '../../core/song/chart.ts';
import type { ChartError } from '../../core/song/chartBar.ts';
import { sectionBars } from '../../core/song/form.ts';
import type { FormEntry, OtherEnding, Section } from '../../core/song/song.ts';
import { barTicks } from '../../core/time/meter.ts';
import { clearEntryEnding, setEntryEnding } from '../../state/edits/ending.ts';
import { chartSentence } from '../parts/chart/chartMessages.ts';
import { chordNamingIn } from '../parts/chart/chordNames.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject, useView } from '../parts/tool/useProject.ts';

/** One bar of the section's last chord, in place of its last bar: an ending to be changed from there. */
function newEnding(section: Section): OtherEnding {
  const { meter, slots } = section;
  const chord = slots.at(-1)?.chord ?? 'no-chord';
  return { replacesBars: 1, slots: [{ chord, durationTicks: barTicks(meter) }], barMeters: [] };
}

function EndingText({
  section,
  ending,
  onEnding,
}: {
  readonly section: Section;
  readonly ending: OtherEnding;
  readonly onEnding: (ending: OtherEnding) => void;
}) {
  const key = useProject((project) => project.song.key);
  const choice = useView((state) => state.chordNaming);
  const [typed, setTyped] = useState<string>();
  const [problem, setProblem] = useState<ChartError>();
  const read = () => {
    if (typed === undefined) return;
    const chart = parseChartBars(typed, section.meter, key);
    setProblem(chart.ok ? undefined : chart.error);
    if (!chart.ok) return;
    setTyped(undefined);
    onEnding({ ...chart.value, replacesBars: ending.replacesBars });
  };
  return (
    <>
      <input
        type="text"
        className="songmap-ending"
        aria-label="Chords of this ending"
        aria-invalid={problem !== undefined}
        aria-describedby="songmap-ending-problem"
        autoComplete="off"
        spellCheck={false}
        value={typed ?? formatChartBars(ending, section.meter, chordNamingIn(choice, key))}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={read}
        onKeyDown={(event) => event.key === 'Enter' && read()}
      />
      <span id="songmap-ending-problem" role="status">
        {problem && <span className="chart-problem">{chartSentence(problem)}</span>}
      </span>
    </>
  );
}

/** The ending of one return, where it is another than the section's own. */
export function EndingField({
  section,
  entry,
  playing,
}: {
  readonly section: Section;
  readonly entry: FormEntry;
  /** The name of this playing, “Verse 2”. */
  readonly playing: string;
}) {
  const { store } = useParts();
  const set = (ending: OtherEnding) =>
    store.edit(setEntryEnding(entry.id, ending), { label: 'ending of this return' });
  const { ending } = entry;
  if (!ending)
    return (
      <button type="button" onClick={() => set(newEnding(section))}>
        Another ending for {playing}
      </button>
    );
  const bars = sectionBars(section).length;
  return (
    <div className="songmap-side-part" role="group" aria-label={`Ending of ${playing}`}>
      <label className="field">
        <span>{playing} ends otherwise, in place of</span>
        <select
          value={ending.replacesBars}
          onChange={(event) => set({ ...ending, replacesBars: Number(event.target.value) })}
        >
          {Array.from({ length: bars + 1 }, (_, count) => (
            <option key={count} value={count}>
              {count === 0 ? 'nothing: after the last bar' : `the last ${count} of ${bars} bars`}
            </option>
          ))}
        </select>
      </label>
      <EndingText key={entry.id} section={section} ending={ending} onEnding={set} />
      <button
        type="button"
        onClick={() => store.edit(clearEntryEnding(entry.id), { label: 'ending of this return' })}
      >
        End as the section does
      </button>
    </div>
  );
}
