import { type KeyboardEvent, useRef, useState } from 'react';
import type { Key } from '../../core/harmony/key.ts';
import { parseChartBars } from '../../core/song/chart.ts';
import type { ChartError } from '../../core/song/chartBar.ts';
import type { Section } from '../../core/song/song.ts';
import type { Meter } from '../../core/time/meter.ts';
import { chartSentence } from '../parts/chart/chartMessages.ts';
import { draftPlace, sectionText } from '../parts/chart/sectionText.ts';
import type { ChartWriting } from '../parts/chart/useChartWriting.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject, useView } from '../parts/tool/useProject.ts';

function selectPlace(field: HTMLTextAreaElement | null, error: ChartError): void {
  if ('at' in error) field?.setSelectionRange(error.at, error.at + error.text.length);
}

/** A sentence that comes up under the fold is of no use. */
function scrollIntoSight(element: HTMLElement | null): void {
  element?.scrollIntoView({ block: 'nearest' });
}

function faultOf(draft: string | undefined, meter: Meter, key: Key): ChartError | undefined {
  const read = draft === undefined ? undefined : parseChartBars(draft, meter, key);
  return read && !read.ok ? read.error : undefined;
}

/**
 * The chart as text: `| D / A / | Bm G |`. It is read on leaving or with Ctrl + Enter. Text that
 * can't be read stays, also on this device after the page is left, and the chart stays as it was.
 */
export function ChartText({
  section,
  writing,
}: {
  readonly section: Section;
  readonly writing: ChartWriting;
}) {
  const { view, store } = useParts();
  const field = useRef<HTMLTextAreaElement>(null);
  const key = useProject((project) => project.song.key);
  const choice = useView((state) => state.chordNaming);
  const drafts = useView((state) => state.chartDrafts);
  const place = draftPlace(store.snapshot().id, section.id);
  const draft = drafts[place];
  const [problem, setProblem] = useState(() => faultOf(draft, section.meter, key));
  const written = sectionText(section, choice, key);
  const text = draft ?? written;

  const keep = (next: string | undefined) => {
    const { [place]: _, ...others } = view.snapshot().chartDrafts;
    view.set({ chartDrafts: next === undefined ? others : { ...others, [place]: next } });
  };
  const read = (): ChartError | undefined => {
    if (draft === undefined) return undefined;
    const chart = parseChartBars(draft, section.meter, key);
    setProblem(chart.ok ? undefined : chart.error);
    if (!chart.ok) return chart.error;
    writing.replace(chart.value, 'write chart');
    keep(undefined);
    return undefined;
  };
  const press = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
    event.preventDefault();
    const error = read();
    if (error) selectPlace(field.current, error);
  };
  const showPlace = () => {
    field.current?.focus();
    if (problem) selectPlace(field.current, problem);
  };

  return (
    <div className="chart-text">
      <label className="field">
        <span>
          Bars between |, one sign for each beat: a chord, or / to go on. % repeats the bar, N.C. is
          no chord, 2/4 at the start of a bar is its own meter. Done, or Ctrl + Enter, reads it.
        </span>
        <textarea
          ref={field}
          className="chart-textarea"
          rows={Math.max(4, text.split('\n').length + 1)}
          autoComplete="off"
          autoCapitalize="off"
          autoCorrect="off"
          spellCheck={false}
          aria-invalid={problem !== undefined}
          aria-describedby="chart-text-problem"
          value={text}
          onChange={(event) => {
            setProblem(undefined);
            keep(event.target.value);
          }}
          onKeyDown={press}
          onBlur={read}
        />
      </label>
      {draft !== undefined && (
        <button type="button" className="strong" onClick={() => read()}>
          Done
        </button>
      )}
      <div id="chart-text-problem" role="status">
        {problem && (
          <p className="chart-problem" ref={scrollIntoSight}>
            {chartSentence(problem)} The song is as it was.
            <span className="row">
              <button type="button" onClick={showPlace}>
                Show the place
              </button>
              <button
                type="button"
                onClick={() => {
                  setProblem(undefined);
                  keep(undefined);
                }}
              >
                Back to the chart as it was
              </button>
            </span>
          </p>
        )}
      </div>
    </div>
  );
}
