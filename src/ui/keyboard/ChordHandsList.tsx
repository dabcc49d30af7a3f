import { useRef, useState } from 'react';
import { formatChordSymbol } from '../../core/harmony/chordSymbol.ts';
import type { FormEntryId, SectionId } from '../../core/ids.ts';
import type { ChordSlot } from '../../core/song/song.ts';
import { motion } from '../../core/voicing/motion.ts';
import { nextInversion } from '../../core/voicing/nextInversion.ts';
import { type HeldKeys, heldKeys, keysOfHand, type Voicing } from '../../core/voicing/voicing.ts';
import type { Edit } from '../../state/edits/edit.ts';
import { useParts } from '../parts.ts';
import { useProject } from '../useProject.ts';
import { useWidth } from '../useWidth.ts';
import { ChordHands, type HandActs } from './ChordHands.tsx';
import { HandsPlaymark } from './HandsPlaymark.tsx';
import { KeyChooser } from './KeyChooser.tsx';
import { keyboardsInLine, spanAround } from './keyboardGeometry.ts';

const GAP_PX = 26;

function nameOf({ chord }: ChordSlot): string {
  return chord === 'no-chord' ? 'N.C.' : formatChordSymbol(chord);
}

/** Chords with their hands, one voicing for each slot, and how hands are pinned for them. */
export type ChordHandsRow = {
  readonly slots: readonly ChordSlot[];
  readonly voicings: readonly Voicing[];
  /** The hands that follow those of a slot; undefined where none do. */
  readonly voicingAfter: (slot: number) => Voicing | undefined;
  readonly pin: (slot: number, held: HeldKeys) => Edit;
  readonly letGo: (slot: number) => Edit;
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
  const { slots, voicings } = row;
  const { store } = useParts();
  const settings = useProject((project) => project.voicing);
  const list = useRef<HTMLOListElement>(null);
  const width = useWidth(list);
  const [open, setOpen] = useState<number>();
  const span = spanAround(voicings.flat().map((note) => note.keyNumber));
  const { count, keyboardPx } = keyboardsInLine(span, width, GAP_PX);

  const pin = (slot: number, held: HeldKeys, label: string) =>
    store.edit(row.pin(slot, held), { label });
  const actsFor = (slot: ChordSlot, place: number, voicing: Voicing): HandActs => {
    const nudge = (direction: 'up' | 'down') => {
      if (slot.chord === 'no-chord') return undefined;
      const next = nextInversion(voicing, slot.chord, direction, settings);
      return next && (() => pin(place, heldKeys(next), `inversion ${direction}`));
    };
    return {
      up: nudge('up'),
      down: nudge('down'),
      pin: () => {
        if (slot.fixedKeys) store.edit(row.letGo(place), { label: 'let hands go' });
        else pin(place, heldKeys(voicing), 'pin hands');
      },
      open: () => setOpen(open === place ? undefined : place),
    };
  };

  const openSlot = open === undefined ? undefined : slots[open];
  const openVoicing = open === undefined ? undefined : voicings[open];
  return (
    <>
      {open !== undefined && openVoicing && openSlot && openSlot.chord !== 'no-chord' && (
        <KeyChooser
          key={open}
          chord={openSlot.chord}
          voicing={openVoicing}
          onKeys={(held) => pin(open, held, 'choose keys')}
          onClose={() => setOpen(undefined)}
        />
      )}
      <ol
        className="keyboard-chords"
        ref={list}
        style={{ gridTemplateColumns: `repeat(${count}, minmax(0, 1fr))`, columnGap: GAP_PX }}
      >
        {slots.map((slot, place) => {
          const voicing = voicings[place] ?? [];
          const next = row.voicingAfter(place);
          return (
            <ChordHands
              key={place}
              slot={slot}
              place={place}
              name={nameOf(slot)}
              voicing={voicing}
              next={next}
              motionToNext={
                next ? motion(keysOfHand(voicing, 'right'), keysOfHand(next, 'right')) : 0
              }
              span={span}
              keyboardPx={keyboardPx}
              showsFingers={showsFingers}
              isOpen={open === place}
              acts={actsFor(slot, place, voicing)}
            />
          );
        })}
      </ol>
      <HandsPlaymark heardIn={row.heardIn} list={list} />
    </>
  );
}
