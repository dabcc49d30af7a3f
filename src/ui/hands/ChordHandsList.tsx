import { useMemo, useRef, useState } from 'react';
import type { FormEntryId, SectionId } from '../../core/ids.ts';
import type { ChordSlot } from '../../core/song/song.ts';
import type { HeldKeys, Voicing } from '../../core/voicing/voicing.ts';
import type { Edit } from '../../state/edits/edit.ts';
import { useWidth } from '../kit/useWidth.ts';
import { keyboardsInLine, spanAround } from '../parts/keyboard/keyboardGeometry.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { type ChordActs, ChordHands } from './ChordHands.tsx';
import { HandsPlaymark } from './HandsPlaymark.tsx';
import { KeyChooser } from './KeyChooser.tsx';

const GAP_PX = 26;

/** How the hands of a row's slots are pinned and let go; the same object as long as the row is the same chords'. */
export type HandEdits = {
  readonly pin: (slot: number, held: HeldKeys) => Edit;
  readonly letGo: (slot: number) => Edit;
};

/** Chords with their hands, one voicing for each slot, and how hands are pinned for them. */
export type ChordHandsRow = {
  readonly slots: readonly ChordSlot[];
  readonly voicings: readonly Voicing[];
  /** The hands that follow those of a slot; undefined where none do. */
  readonly voicingAfter: (slot: number) => Voicing | undefined;
  readonly edits: HandEdits;
  /** Where these chords are heard: in the section itself, or in the other ending of one playing. */
  readonly heardIn: { readonly sectionId: SectionId; readonly endingOf?: FormEntryId };
};

/** A row of chords, each with its hands on a small keyboard. */
export function ChordHandsList({
  row,
  showsFingers,
}: {
  readonly row: ChordHandsRow;
  readonly showsFingers: boolean;
}) {
  const { slots, voicings, edits } = row;
  const { store } = useParts();
  const settings = useProject((project) => project.voicing);
  const list = useRef<HTMLOListElement>(null);
  const width = useWidth(list);
  const [open, setOpen] = useState<number>();
  const follows = row.voicingAfter(slots.length - 1) ?? [];
  const span = spanAround([...voicings, follows].flat().map((note) => note.keyNumber));
  const { count, keyboardPx } = keyboardsInLine(span, width, GAP_PX);

  const acts = useMemo(
    (): ChordActs => ({
      pin: (slot, held, label) => store.edit(edits.pin(slot, held), { label }),
      letGo: (slot) => store.edit(edits.letGo(slot), { label: 'let hands go' }),
      open: (slot) => setOpen((now) => (now === slot ? undefined : slot)),
    }),
    [store, edits],
  );
  const openSlot = open === undefined ? undefined : slots[open];
  const openVoicing = open === undefined ? undefined : voicings[open];
  return (
    <>
      {open !== undefined && openVoicing && openSlot && openSlot.chord !== 'no-chord' && (
        <KeyChooser
          key={open}
          chord={openSlot.chord}
          voicing={openVoicing}
          onKeys={(held) => acts.pin(open, held, 'choose keys')}
          onClose={() => setOpen(undefined)}
        />
      )}
      <ol
        className="keyboard-chords"
        ref={list}
        style={{ gridTemplateColumns: `repeat(${count}, minmax(0, 1fr))`, columnGap: GAP_PX }}
      >
        {width > 0 &&
          slots.map((slot, place) => (
            <ChordHands
              key={place}
              slot={slot}
              place={place}
              voicing={voicings[place] ?? []}
              next={row.voicingAfter(place)}
              settings={settings}
              span={span}
              keyboardPx={keyboardPx}
              showsFingers={showsFingers}
              isOpen={open === place}
              acts={acts}
            />
          ))}
      </ol>
      <HandsPlaymark heardIn={row.heardIn} list={list} />
    </>
  );
}
