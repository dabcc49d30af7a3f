import { useMemo } from 'react';
import type { Section } from '../../core/song/song.ts';
import { pinEndingVoicing, unpinEndingVoicing } from '../../state/edits/ending.ts';
import { VoicingNotation } from '../parts/notation/VoicingNotation.tsx';
import { ChordHandsList, type HandEdits } from './ChordHandsList.tsx';
import { type EndingHands, useEndings } from './useEndings.ts';

function EndingView({
  section,
  hands,
  showsFingers,
  isNotated,
}: {
  readonly section: Section;
  readonly hands: EndingHands;
  readonly showsFingers: boolean;
  readonly isNotated: boolean;
}) {
  const { entry, playing, ending, voicings, after } = hands;
  const { slots, barMeters } = ending;
  const name = `Ending of ${playing}`;
  const edits = useMemo(
    (): HandEdits => ({
      pin: (slot, held) => pinEndingVoicing(entry.id, slot, held),
      letGo: (slot) => unpinEndingVoicing(entry.id, slot),
    }),
    [entry.id],
  );
  const follows = (slot: number) => voicings.slice(slot + 1).find(({ length }) => length > 0);
  return (
    <section className="keyboard-ending" aria-label={name}>
      <h3>{name}</h3>
      {isNotated ? (
        <VoicingNotation section={{ ...section, name, slots, barMeters }} voicings={voicings} />
      ) : (
        <ChordHandsList
          row={{
            slots,
            voicings,
            voicingAfter: (slot) => follows(slot) ?? after,
            edits,
            heardIn: { sectionId: section.id, endingOf: entry.id },
          }}
          showsFingers={showsFingers}
        />
      )}
    </section>
  );
}

/** The hands of the playings of a section that end otherwise, from the section's own hands into what comes next. */
export function EndingHandsViews({
  section,
  showsFingers,
  isNotated,
}: {
  readonly section: Section;
  readonly showsFingers: boolean;
  readonly isNotated: boolean;
}) {
  return useEndings(section.id).map((hands) => (
    <EndingView
      key={hands.entry.id}
      section={section}
      hands={hands}
      showsFingers={showsFingers}
      isNotated={isNotated}
    />
  ));
}
