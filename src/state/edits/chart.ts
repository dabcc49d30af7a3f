import type { SectionId } from '../../core/ids.ts';
import type { BarMeter, ChordSlot } from '../../core/song/song.ts';
import type { HeldKeys } from '../../core/voicing/voicing.ts';
import { fillsBars } from '../../formats/projectFaults.ts';
import { sameData } from '../sameData.ts';
import { type Edit, inSection, inSong, mapped, withParts } from './edit.ts';
import { type BarsMoved, movedAsAlike, movedAsSaid, withSectionMoved } from './movedBars.ts';
import { pinned, unpinned, withPinsOf } from './pins.ts';
import { countedInFirstMeter } from './song.ts';

/**
 * Replaces a section's chords and its bars of another meter, as `parseChartBars` reads them in the
 * section's meter; nothing where the slots do not fill their bars (they were read in another). Pinned
 * voicings stay with the chords before and after the part of the chart that changed, and changes of
 * the pattern with their bars: those that `barsMoved` says, or else those that are alike.
 */
export function setSectionChart(
  sectionId: SectionId,
  slots: readonly ChordSlot[],
  barMeters: readonly BarMeter[],
  barsMoved?: BarsMoved,
): Edit {
  const setChart = inSong((song) => {
    const section = song.sections.find(({ id }) => id === sectionId);
    if (!section || !fillsBars({ ...section, slots, barMeters })) return song;
    const after = withParts(section, { slots: withPinsOf(section.slots, slots), barMeters });
    const movedBar = barsMoved ? movedAsSaid(barsMoved) : movedAsAlike(section, after);
    return withSectionMoved(song, section, after, movedBar);
  });
  const countTempo = inSong(countedInFirstMeter);
  return (project) => countTempo(setChart(project));
}

function inSlot(
  sectionId: SectionId,
  slotIndex: number,
  change: (slot: ChordSlot) => ChordSlot,
): Edit {
  return inSection(sectionId, (section) =>
    withParts(section, {
      slots: mapped(section.slots, (slot, i) => (i === slotIndex ? change(slot) : slot)),
    }),
  );
}

/** Another chord for one slot (0-based), as long as the one before. A voicing pinned for the old chord goes. */
export function setChord(sectionId: SectionId, slotIndex: number, chord: ChordSlot['chord']): Edit {
  return inSlot(sectionId, slotIndex, (slot) =>
    sameData(slot.chord, chord) ? slot : withParts(slot, { chord, fixedKeys: undefined }),
  );
}

/** Pins the keys that both hands hold for a slot (0-based). N.C. has nothing to hold and stays. */
export function pinVoicing(sectionId: SectionId, slotIndex: number, fixedKeys: HeldKeys): Edit {
  return inSlot(sectionId, slotIndex, (slot) => pinned(slot, fixedKeys));
}

/** Leaves the voicing of a slot (0-based) to the optimiser again. */
export function unpinVoicing(sectionId: SectionId, slotIndex: number): Edit {
  return inSlot(sectionId, slotIndex, unpinned);
}
