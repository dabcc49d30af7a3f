import type { KeyNumber } from '../../core/harmony/pitch.ts';
import type { ChordSlot } from '../../core/song/song.ts';
import type { HeldKeys } from '../../core/voicing/voicing.ts';
import { sameData } from '../sameData.ts';
import { withParts } from './edit.ts';

function lowToHigh(keys: readonly KeyNumber[]): KeyNumber[] {
  return [...new Set(keys)].toSorted((a, b) => a - b);
}

/** The slot with the keys that both hands hold for it; N.C. has nothing to hold and stays. */
export function pinned(slot: ChordSlot, { left, right }: HeldKeys): ChordSlot {
  const fixedKeys = { left: lowToHigh(left), right: lowToHigh(right) };
  return slot.chord === 'no-chord' ? slot : withParts(slot, { fixedKeys });
}

/** The slot with its voicing left to the optimiser; the very same where it is already. */
export function unpinned(slot: ChordSlot): ChordSlot {
  return withParts(slot, { fixedKeys: undefined });
}

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

/**
 * New slots with the pinned voicings of the old ones, as far as the same chords run from the start and
 * from the end. A slot that has a pinned voicing of its own keeps that.
 */
export function withPinsOf(before: readonly ChordSlot[], slots: readonly ChordSlot[]): ChordSlot[] {
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
