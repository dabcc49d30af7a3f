import '../parts/song/washes.css';
import '../kit/sheets.css';
import './keyboard.css';
import './keyChooser.css';
import { useMemo, useState } from 'react';
import { ownChart } from '../../core/song/form.ts';
import type { Section } from '../../core/song/song.ts';
import type { SectionHands } from '../../core/voicing/sectionHands.ts';
import { pinVoicing, unpinVoicing } from '../../state/edits/chart.ts';
import { NotesToggle } from '../parts/notation/NotesToggle.tsx';
import { VoicingNotation } from '../parts/notation/VoicingNotation.tsx';
import { useChosenSection } from '../parts/song/useChosenSection.ts';
import { useProject, useView } from '../parts/tool/useProject.ts';
import { ChordHandsList, type HandEdits } from './ChordHandsList.tsx';
import { EndingHandsViews } from './EndingHandsView.tsx';
import { HandSettings } from './HandSettings.tsx';
import { nothingPlayableSentence } from './handsMessages.ts';
import { MotionTotals } from './MotionTotals.tsx';
import { SectionTabs } from './SectionTabs.tsx';
import { type FoundHands, useSectionHands, voicingAfter } from './useSectionHands.ts';

/** The total before the latest change, as long as the page stays on one section. */
function useTotalBefore(total: number | undefined, sectionId: string): number | undefined {
  const [seen, setSeen] = useState({ sectionId, total, before: undefined as number | undefined });
  if (seen.sectionId !== sectionId) setSeen({ sectionId, total, before: undefined });
  else if (seen.total !== total) setSeen({ sectionId, total, before: seen.total });
  return seen.before;
}

function PlayableHands({
  section,
  hands,
}: {
  readonly section: Section;
  readonly hands: SectionHands;
}) {
  const [showsFingers, setShowsFingers] = useState(true);
  const isNotated = useView(({ notated }) => notated.includes('hands'));
  const edits = useMemo(
    (): HandEdits => ({
      pin: (slot, held) => pinVoicing(section.id, slot, held),
      letGo: (slot) => unpinVoicing(section.id, slot),
    }),
    [section.id],
  );
  const before = useTotalBefore(hands.motions.here, section.id);
  return (
    <>
      <div className="keyboard-summary">
        <MotionTotals motions={hands.motions} before={before} />
        {!isNotated && (
          <button
            type="button"
            aria-pressed={showsFingers}
            onClick={() => setShowsFingers(!showsFingers)}
          >
            Usual fingers
          </button>
        )}
      </div>
      {isNotated ? (
        <VoicingNotation section={section} voicings={hands.voicings} />
      ) : (
        <ChordHandsList
          key={section.id}
          row={{
            slots: section.slots,
            voicings: hands.voicings,
            voicingAfter: (slot) => voicingAfter(hands.voicings, slot),
            edits,
            heardIn: { sectionId: section.id },
          }}
          showsFingers={showsFingers}
        />
      )}
      <EndingHandsViews section={section} showsFingers={showsFingers} isNotated={isNotated} />
    </>
  );
}

function SectionPage({ section: written }: { readonly section: Section }) {
  const form = useProject((project) => project.song.form);
  const section = useMemo(() => ({ ...written, ...ownChart(written, form) }), [written, form]);
  return (
    <div className="keyboard">
      <h2 className="visually-hidden">Hands in {section.name}</h2>
      <div className="keyboard-top">
        <div className="keyboard-shown">
          <SectionTabs chosen={section.id} />
          <NotesToggle page="hands" />
        </div>
        <HandSettings />
      </div>
      <Hands found={useSectionHands(section)} />
    </div>
  );
}

function Hands({ found }: { readonly found: FoundHands | undefined }) {
  const settings = useProject((project) => project.voicing);
  if (!found) return <p className="hint">Looking for the hands …</p>;
  const { section, hands } = found;
  if (hands.ok) return <PlayableHands section={section} hands={hands.value} />;
  return (
    <p className="keyboard-problem" role="alert">
      {nothingPlayableSentence(section.slots[hands.error.place], settings)}
    </p>
  );
}

/** The hands of every chord of the chosen section, and what they may do. */
export function HandsPage() {
  const section = useChosenSection();
  return section ? <SectionPage section={section} /> : <p>This song has no section.</p>;
}
