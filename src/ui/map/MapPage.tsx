import '../parts/song/washes.css';
import '../kit/sheets.css';
import './songMap.css';
import '../parts/ribbon/ribbon.css';
import { useState } from 'react';
import type { FormEntryId, SectionId } from '../../core/ids.ts';
import type { Section } from '../../core/song/song.ts';
import {
  addFormEntry,
  addSection,
  moveFormEntry,
  removeFormEntry,
} from '../../state/edits/form.ts';
import { newSectionId } from '../../state/newIds.ts';
import { selectTimeline } from '../../state/selectors.ts';
import { Ribbon } from '../parts/ribbon/Ribbon.tsx';
import { chosenPlace, playingName } from '../parts/song/marking.ts';
import { useChosenSection } from '../parts/song/useChosenSection.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject, useView } from '../parts/tool/useProject.ts';
import { type FormActs, RibbonTools } from './RibbonTools.tsx';
import { SectionChart } from './SectionChart.tsx';
import { SectionHeading } from './SectionHeading.tsx';
import { SectionSettings } from './SectionSettings.tsx';
import { SongFacts } from './SongFacts.tsx';
import { Unplayed } from './Unplayed.tsx';

/** The acts on the form; each follows what it moved. */
function useFormActs(
  section: Section,
  choose: (sectionId: SectionId, entryId?: FormEntryId) => void,
): FormActs {
  const { store } = useParts();
  const entryAt = (place: number) => store.snapshot().song.form.at(place);
  return {
    move: (from, to) => {
      store.edit(moveFormEntry(from, to), { label: 'order of playing' });
      const moved = entryAt(to);
      if (moved) choose(moved.sectionId, moved.id);
    },
    playAgain: () => {
      store.edit(addFormEntry(section.id), { label: 'add a return' });
      choose(section.id, entryAt(-1)?.id);
    },
    remove: (place) => {
      const entry = entryAt(place);
      if (entry) store.edit(removeFormEntry(entry.id), { label: 'take out of the form' });
    },
    addSection: (kind) => {
      const id = newSectionId(store.snapshot());
      store.edit(addSection(id, kind), { label: 'new section' });
      choose(id);
    },
  };
}

function SongMap({ section }: { readonly section: Section }) {
  const { view } = useParts();
  const song = useProject((project) => project.song);
  const timeline = useProject(selectTimeline);
  const range = useView((state) => state.range);
  const [entryId, setEntryId] = useState<FormEntryId>();
  const choose = (sectionId: SectionId, entry?: FormEntryId) => {
    setEntryId(entry);
    view.set({ sectionId });
  };
  const acts = useFormActs(section, choose);
  const place = chosenPlace(song.form, section.id, entryId);
  const entry = place === undefined ? undefined : song.form[place];
  const playing = place === undefined ? '' : playingName(timeline, place);
  const washOf = (id: SectionId) => song.sections.find((each) => each.id === id)?.wash ?? 'straw';
  return (
    <div className="songmap">
      <h2 className="visually-hidden">Map</h2>
      <Ribbon
        timeline={timeline}
        washOf={washOf}
        chosen={place}
        range={range}
        onChoose={(to) => {
          const chosen = song.form[to];
          if (chosen) choose(chosen.sectionId, chosen.id);
        }}
        onMove={acts.move}
        onRemove={acts.remove}
      />
      <Unplayed
        sections={song.sections.filter(
          ({ id }) => !song.form.some(({ sectionId }) => sectionId === id),
        )}
        chosen={section.id}
        onChoose={choose}
      />
      <RibbonTools timeline={timeline} place={place} acts={acts} />
      <div className="songmap-sheet">
        <section className="songmap-main" aria-label="Chart">
          <SectionHeading section={section} />
          <SectionChart section={section} place={place} playing={playing} />
        </section>
        <div className="songmap-side">
          <SongFacts section={section} />
          <SectionSettings section={section} entry={entry} playing={playing} />
        </div>
      </div>
    </div>
  );
}

/** The road map: the form as a ribbon, the chosen section's chart, and what the song is in. */
export function MapPage() {
  const section = useChosenSection();
  return section ? <SongMap section={section} /> : <p>This song has no section.</p>;
}
