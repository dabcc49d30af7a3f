import './chart.css';
import { useState } from 'react';
import type { Section } from '../../core/song/song.ts';
import { useParts } from '../parts.ts';
import { useProject, useView } from '../useProject.ts';
import { CHORD_NAMINGS, type ChordNamingChoice } from '../viewState.ts';
import { ChartGrid, type SlotNames } from './ChartGrid.tsx';
import { ChartText } from './ChartText.tsx';
import { cellAt, chartBars } from './chartLayout.ts';
import { chordNamingIn, NAMING_BELOW, slotName } from './chordNames.ts';
import { draftPlace } from './sectionText.ts';
import { type ChartWriting, useChartWriting } from './useChartWriting.ts';

type Showing = 'beats' | 'text';

const NAMING_LABELS: Readonly<Record<ChordNamingChoice, string>> = {
  symbols: 'Symbols',
  numerals: 'Numerals',
  numbers: 'Numbers',
};

function Choice<T extends string>({
  label,
  options,
  chosen,
  onChoose,
}: {
  readonly label: string;
  readonly options: readonly (readonly [T, string])[];
  readonly chosen: T;
  readonly onChoose: (option: T) => void;
}) {
  return (
    <div className="chart-choice" role="group" aria-label={label}>
      {options.map(([option, name]) => (
        <button
          type="button"
          key={option}
          aria-pressed={option === chosen}
          onClick={() => onChoose(option)}
        >
          {name}
        </button>
      ))}
    </div>
  );
}

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

function useSlotNames(section: Section): SlotNames {
  const key = useProject((project) => project.song.key);
  const choice = useView((state) => state.chordNaming);
  const named = (naming: ChordNamingChoice) =>
    section.slots.map((slot) => slotName(slot, chordNamingIn(naming, key)));
  return { names: named(choice), below: named(NAMING_BELOW[choice]) };
}

/** The chart of a section, beat by beat or as text; `place` is the playing it is marked in. */
export function Chart({
  section,
  place,
}: {
  readonly section: Section;
  readonly place: number | undefined;
}) {
  const [showing, setShowing] = useState<Showing>('beats');
  const [active, setActive] = useState(0);
  const slotNames = useSlotNames(section);
  const writing = useChartWriting(section);
  const isBroken = useIsBroken(section) && showing === 'beats';
  const bars = chartBars(section);
  const bar = (cellAt(bars, active) ?? bars[0]?.cells[0])?.bar ?? 0;
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
        {showing === 'beats' && <BarButtons bar={bar} writing={writing} />}
      </div>
      {showing === 'beats' ? (
        <ChartGrid
          section={section}
          place={place}
          slotNames={slotNames}
          active={active}
          onActive={setActive}
          writing={writing}
        />
      ) : (
        <ChartText key={section.id} section={section} writing={writing} />
      )}
    </div>
  );
}
