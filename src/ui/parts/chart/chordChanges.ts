import type { Chart } from '../../../core/song/chart.ts';
import { sectionBars, sectionTicks } from '../../../core/song/form.ts';
import type { ChordSlot, Section } from '../../../core/song/song.ts';
import { barTicks } from '../../../core/time/meter.ts';
import type { Ticks } from '../../../core/time/ticks.ts';

/** A slot with the tick, from the section's start, at which it begins. */
export type PlacedSlot = { readonly startTick: Ticks; readonly slot: ChordSlot };

/** The slots with the ticks at which they begin. */
export function placedSlots(slots: readonly ChordSlot[]): PlacedSlot[] {
  let startTick = 0;
  return slots.map((slot) => {
    const placed = { startTick, slot };
    startTick += slot.durationTicks;
    return placed;
  });
}

/** Slots that begin at these ticks (ascending, the first at 0) and last until the next or until `endTick`. */
function slotsUntil(placed: readonly PlacedSlot[], endTick: Ticks): ChordSlot[] {
  return placed.map(({ startTick, slot }, i) => ({
    ...slot,
    durationTicks: (placed[i + 1]?.startTick ?? endTick) - startTick,
  }));
}

function changed(slots: readonly ChordSlot[], change: (placed: PlacedSlot[]) => PlacedSlot[]) {
  return slotsUntil(change(placedSlots(slots)), sectionTicks({ slots }));
}

/**
 * The slots with a chord that begins at `tick` and lasts until the next change. A change that stands
 * there already is replaced, its pinned voicing goes. Outside the slots nothing changes.
 */
export function withChordAt(
  slots: readonly ChordSlot[],
  tick: Ticks,
  chord: ChordSlot['chord'],
): ChordSlot[] {
  if (tick < 0 || tick >= sectionTicks({ slots })) return [...slots];
  return changed(slots, (placed) =>
    [
      ...placed.filter(({ startTick }) => startTick !== tick),
      { startTick: tick, slot: { chord, durationTicks: 0 } },
    ].toSorted((a, b) => a.startTick - b.startTick),
  );
}

/**
 * The slots without the change at `tick`, so that the chord before goes on. The first has none
 * before it and becomes N.C. Where no chord begins nothing changes.
 */
export function withoutChordAt(slots: readonly ChordSlot[], tick: Ticks): ChordSlot[] {
  if (tick === 0) return withChordAt(slots, 0, 'no-chord');
  return changed(slots, (placed) => placed.filter(({ startTick }) => startTick !== tick));
}

/**
 * The slots with the change at `from` moved to `to`, which must lie after the change before it and
 * before the one after it; otherwise, and for the first slot, nothing changes.
 */
export function withChangeMoved(slots: readonly ChordSlot[], from: Ticks, to: Ticks): ChordSlot[] {
  const placed = placedSlots(slots);
  const place = placed.findIndex(({ startTick }) => startTick === from);
  const before = placed[place - 1]?.startTick;
  const after = placed[place + 1]?.startTick ?? sectionTicks({ slots });
  if (before === undefined || to <= before || to >= after) return [...slots];
  return changed(slots, (all) =>
    all.map((each, i) => (i === place ? { ...each, startTick: to } : each)),
  );
}

function movedMeters({ barMeters }: Section, from: number, by: 1 | -1): Chart['barMeters'] {
  return barMeters.map((other) => (other.bar >= from ? { ...other, bar: other.bar + by } : other));
}

/** The chart with one more bar of the section's meter after bar `bar` (0-based), in which the chord goes on. */
export function withBarAfter(section: Section, bar: number): Chart {
  const added = barTicks(section.meter);
  const end = sectionBars(section)[bar + 1]?.startTick ?? sectionTicks(section);
  const last = placedSlots(section.slots).findLastIndex(({ startTick }) => startTick < end);
  return {
    slots: section.slots.map((slot, i) =>
      i === last ? { ...slot, durationTicks: slot.durationTicks + added } : slot,
    ),
    barMeters: movedMeters(section, bar + 1, 1),
  };
}

/**
 * The chart without bar `bar` (0-based): what sounds in it is cut out, a chord that lasts beyond it
 * keeps the rest. The only bar of a section stays.
 */
export function withoutBar(section: Section, bar: number): Chart {
  const bars = sectionBars(section);
  const out = bars[bar];
  if (!out || bars.length === 1) return section;
  const from = out.startTick;
  const to = from + barTicks(out.meter);
  const slots = placedSlots(section.slots).map(({ startTick, slot }) => {
    const endTick = startTick + slot.durationTicks;
    const cut = Math.max(0, Math.min(endTick, to) - Math.max(startTick, from));
    return { ...slot, durationTicks: slot.durationTicks - cut };
  });
  return {
    slots: slots.filter((slot) => slot.durationTicks > 0),
    barMeters: movedMeters(
      { ...section, barMeters: section.barMeters.filter((other) => other.bar !== bar) },
      bar,
      -1,
    ),
  };
}
