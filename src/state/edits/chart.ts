import type { KeyNumber } from '../../core/harmony/pitch.ts';
import type { SectionId } from '../../core/ids.ts';
import type { BarMeter, ChordSlot } from '../../core/song/song.ts';
import { fillsBars } from '../../formats/projectFaults.ts';
import { sameData } from '../sameData.ts';
import { type Edit, inSection, inSong, mapped, withParts } from './edit.ts';
import { countedInFirstMeter } from './song.ts';

/** How many slots two lists have alike before the first that differs in its chord. */
function alikeAtStart(a: readonly ChordSlot[], b: readonly ChordSlot[]): number {
  const end = Math.min(a.length, b.length);
  let n = 0;
  while (n < end && sameData(a[n]?.chord, b[n]?.chord)) n++;
  return n;
}

function withPin(slot: ChordSlot, before: ChordSlot | undefined): ChordSlot {
  return before?.fixedKeys && !slot.fixedKeys ? { ...slot, fixedKeys: before.fixedKeys } : slot;
}

/** New slots with the pinned voicings of the old ones, as far as the same chords run from the start and from the end. */
function withPinsOf(before: readonly ChordSlot[], slots: readonly ChordSlot[]): ChordSlot[] {
  const fromStart = alikeAtStart(before, slots);
  const shorter = Math.min(before.length, slots.length);
  const fromEnd = Math.min(
    alikeAtStart(before.toReversed(), slots.toReversed()),
    shorter - fromStart,
  );
  return slots.map((slot, i) => {
    if (i < fromStart) return withPin(slot, before[i]);
    const place = i - slots.length;
    return place >= -fromEnd ? withPin(slot, before.at(place)) : slot;
  });
}

/**
 * Replaces a section's chords and its bars of another meter, as `parseChartBars` reads them in the
 * section's meter; nothing where the slots do not fill their bars (they were read in another). Pinned voicings stay with the chords before and after the part of
 * the chart that changed.
 */
export function setSectionChart(
  sectionId: SectionId,
  slots: readonly ChordSlot[],
  barMeters: readonly BarMeter[],
): Edit {
  const setChart = inSection(sectionId, (section) =>
    fillsBars({ ...section, slots, barMeters })
      ? withParts(section, { slots: withPinsOf(section.slots, slots), barMeters })
      : section,
  );
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

function lowToHigh(keys: readonly KeyNumber[]): KeyNumber[] {
  return [...new Set(keys)].toSorted((a, b) => a - b);
}

/** Pins the keys that both hands hold for a slot (0-based). N.C. has nothing to hold and stays. */
export function pinVoicing(
  sectionId: SectionId,
  slotIndex: number,
  fixedKeys: NonNullable<ChordSlot['fixedKeys']>,
): Edit {
  const held = { left: lowToHigh(fixedKeys.left), right: lowToHigh(fixedKeys.right) };
  return inSlot(sectionId, slotIndex, (slot) =>
    slot.chord === 'no-chord' ? slot : withParts(slot, { fixedKeys: held }),
  );
}

/** Leaves the voicing of a slot (0-based) to the optimiser again. */
export function unpinVoicing(sectionId: SectionId, slotIndex: number): Edit {
  return inSlot(sectionId, slotIndex, (slot) => withParts(slot, { fixedKeys: undefined }));
}
