import '../parts/chart/chart.css';
import { useState } from 'react';
import type { AnalysedChord } from '../../core/harmony/analysis.ts';
import { formatChordSymbol } from '../../core/harmony/chordSymbol.ts';
import { nextTurn } from '../../core/song/chordRow.ts';
import type { FormEntry, Section } from '../../core/song/song.ts';
import { Choice } from '../kit/Choice.tsx';
import { ChartGrid } from '../parts/chart/ChartGrid.tsx';
import { type ChartCell, cellAt, chartBars } from '../parts/chart/chartLayout.ts';
import { courseShown, patternMarks } from '../parts/chart/patternMarks.ts';
import { draftPlace } from '../parts/chart/sectionText.ts';
import { type ChartWriting, useChartWriting } from '../parts/chart/useChartWriting.ts';
import { useSlotNames } from '../parts/chart/useSlotNames.ts';
import { MusicText } from '../parts/song/ChordName.tsx';
import { roleWords } from '../parts/song/chordRoleWords.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject, useView } from '../parts/tool/useProject.ts';
import { CHORD_NAMINGS, type ChordNamingChoice } from '../parts/tool/viewState.ts';
import { ChartText } from './ChartText.tsx';
import { EndingChart } from './EndingChart.tsx';
import { FromBarField } from './FromBarField.tsx';
import { HearButtons } from './key/HearButtons.tsx';
import { KeyPanel } from './key/KeyPanel.tsx';
import { useSectionAnalysis } from './useSectionAnalysis.ts';

type Showing = 'beats' | 'text';

const NAMING_LABELS: Readonly<Record<ChordNamingChoice, string>> = {
  symbols: 'Symbols',
  numerals: 'Numerals',
  numbers: 'Numbers',
};

function NamingChoice() {
  const { view } = useParts();
  const chosen = useView((state) => state.chordNaming);
  return (
    <Choice
      label="Chords shown as"
      options={CHORD_NAMINGS.map((naming) => [naming, NAMING_LABELS[naming]] as const)}
      chosen={chosen}
      onChoose={(chordNaming) => view.set({ chordNaming })}
    />
  );
}

function BarButtons({ bar, writing }: { readonly bar: number; readonly writing: ChartWriting }) {
  return (
    <div className="chart-bar-buttons">
      <button type="button" onClick={() => writing.addBarAfter(bar)}>
        Add bar <span className="visually-hidden">after bar {bar + 1}</span>
      </button>
      <button type="button" onClick={() => writing.takeOutBar(bar)}>
        Take out bar {bar + 1}
      </button>
    </div>
  );
}

/** Whether a text of the section's chart waits to be repaired. */
function useIsBroken(section: Section): boolean {
  const projectId = useProject((project) => project.id);
  const drafts = useView((state) => state.chartDrafts);
  return draftPlace(projectId, section.id) in drafts;
}

/** What the chord of a cell does in its key. */
function ChordWord({
  cell,
  section,
  analysed,
}: {
  readonly cell: ChartCell | undefined;
  readonly section: Section;
  readonly analysed: ReadonlyArray<AnalysedChord | undefined>;
}) {
  const chord = cell && section.slots[cell.sounds]?.chord;
  const role = cell && analysed[cell.sounds];
  if (!chord || chord === 'no-chord' || !role) return <p className="chart-word" />;
  return (
    <p className="chart-word">
      Bar {cell.bar + 1}: <MusicText text={`${formatChordSymbol(chord)} is ${roleWords(role)}.`} />
    </p>
  );
}

/** The place of the form in which the section is looked at; undefined where it is not played. */
function useFormEntry(place: number | undefined): FormEntry | undefined {
  const form = useProject((project) => project.song.form);
  return place === undefined ? undefined : form[place];
}

/** The chart of a section, beat by beat or as text; `place` is the playing it is marked in. */
export function SectionChart({
  section,
  place,
  playing,
}: {
  readonly section: Section;
  readonly place: number | undefined;
  /** The name of that playing, “Verse 2”. */
  readonly playing: string;
}) {
  const [showing, setShowing] = useState<Showing>('beats');
  const [active, setActive] = useState(0);
  const analysed = useSectionAnalysis(section);
  const slotNames = useSlotNames(section, analysed);
  const writing = useChartWriting(section);
  const entry = useFormEntry(place);
  const patterns = useProject((project) => project.patterns);
  const marks = patternMarks(section, entry, patterns);
  const isBroken = useIsBroken(section) && showing === 'beats';
  const ending = entry?.ending && (
    <EndingChart
      key={entry.id}
      section={section}
      entryId={entry.id}
      ending={entry.ending}
      marks={marks.ending}
      playing={playing}
    />
  );
  const bars = chartBars(section);
  const cell = cellAt(bars, active) ?? bars[0]?.cells[0];
  const bar = cell?.bar ?? 0;
  return (
    <div className="chart">
      <div className="chart-tools">
        <Choice
          label="Chart as"
          options={[
            ['beats', 'Beats'],
            ['text', isBroken ? 'Text, to repair' : 'Text'],
          ]}
          chosen={showing}
          onChoose={setShowing}
        />
        <NamingChoice />
        {showing === 'beats' && (
          <>
            <BarButtons bar={bar} writing={writing} />
            <FromBarField
              key={entry?.id ?? section.id}
              section={section}
              entry={entry}
              bar={bar}
              playing={playing}
            />
          </>
        )}
      </div>
      {showing === 'beats' ? (
        <>
          <ChartGrid
            section={section}
            place={place}
            replacedFrom={bars.length - (entry?.ending?.replacesBars ?? 0)}
            slotNames={slotNames}
            marks={marks.own}
            active={active}
            onActive={setActive}
            writing={writing}
          />
          {ending}
          {cell && (
            <>
              <div className="chart-word-line">
                <ChordWord cell={cell} section={section} analysed={analysed} />
                <HearButtons
                  section={section}
                  slot={cell.sounds}
                  bar={bar}
                  course={courseShown(section, entry)}
                />
              </div>
              <KeyPanel
                place={{
                  name: `bar ${cell.bar + 1}, beat ${cell.beat + 1}`,
                  meter: section.meter,
                  write: (chords, pace) => {
                    writing.writeRow(cell.startTick, chords, pace);
                    setActive(nextTurn(section, cell.startTick, pace));
                  },
                }}
              />
            </>
          )}
        </>
      ) : (
        <>
          <ChartText key={section.id} section={section} writing={writing} />
          {ending}
        </>
      )}
    </div>
  );
}
