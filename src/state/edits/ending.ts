import type { FormEntryId } from '../../core/ids.ts';
import { sectionBars } from '../../core/song/form.ts';
import type { ChordSlot, OtherEnding, Section, Song } from '../../core/song/song.ts';
import type { Meter } from '../../core/time/meter.ts';
import type { HeldKeys } from '../../core/voicing/voicing.ts';
import { fillsBars } from '../../formats/projectFaults.ts';
import { brought, type Edit, mapped, withParts } from './edit.ts';
import { pinned, unpinned, withPinsOf } from './pins.ts';
import { refitChart, refittedBarCounts } from './refitChart.ts';
import { inForm } from './song.ts';

function withEnding(song: Song, id: FormEntryId, ending: OtherEnding | undefined): Song {
  return withParts(song, {
    form: mapped(song.form, (entry) => (entry.id === id ? withParts(entry, { ending }) : entry)),
  });
}

/**
 * Ends the section of one form entry with other bars, as `parseChartBars` reads them in the section's
 * meter. How many bars they replace is brought to a whole number that the section has. Pinned voicings
 * stay as `withPinsOf` keeps them. Nothing where
 * there is no such entry, where the ending has no chord or where its slots do not fill its bars.
 */
export function setEntryEnding(id: FormEntryId, ending: OtherEnding): Edit {
  return inForm((song) => {
    const entry = song.form.find((each) => each.id === id);
    const section = song.sections.find((each) => each.id === entry?.sectionId);
    const { slots, barMeters } = ending;
    if (!section || slots.length === 0 || !fillsBars({ meter: section.meter, slots, barMeters }))
      return song;
    const bars = { lowest: 0, highest: sectionBars(section).length };
    const before = entry?.ending?.replacesBars ?? 0;
    const replacesBars = brought(Math.round(ending.replacesBars), bars, before);
    return withEnding(song, id, {
      replacesBars,
      slots: withPinsOf(entry?.ending?.slots ?? [], slots),
      barMeters,
    });
  });
}

/** Ends the section of one form entry as the section is written. */
export function clearEntryEnding(id: FormEntryId): Edit {
  return inForm((song) => withEnding(song, id, undefined));
}

function inEndingSlot(
  id: FormEntryId,
  slotIndex: number,
  change: (slot: ChordSlot) => ChordSlot,
): Edit {
  return inForm((song) => {
    const ending = song.form.find((each) => each.id === id)?.ending;
    if (!ending) return song;
    const slots = mapped(ending.slots, (slot, i) => (i === slotIndex ? change(slot) : slot));
    return withEnding(song, id, withParts(ending, { slots }));
  });
}

/** Pins the keys that both hands hold for a slot (0-based) of one form entry's other ending. N.C. stays. */
export function pinEndingVoicing(id: FormEntryId, slotIndex: number, keys: HeldKeys): Edit {
  return inEndingSlot(id, slotIndex, (slot) => pinned(slot, keys));
}

/** Leaves the voicing of a slot (0-based) of one form entry's other ending to the optimiser again. */
export function unpinEndingVoicing(id: FormEntryId, slotIndex: number): Edit {
  return inEndingSlot(id, slotIndex, unpinned);
}

/** An ending of a section, brought with it into another meter: its chords as `refitChart` does, in place of the same bars. */
export function refittedEnding(ending: OtherEnding, section: Section, meter: Meter): OtherEnding {
  const kept = sectionBars(section).length - ending.replacesBars;
  const replaced = refittedBarCounts(section, meter).filter((_, bar) => bar >= kept);
  return {
    replacesBars: replaced.reduce((total, bars) => total + bars, 0),
    ...refitChart({ ...section, ...ending }, meter),
  };
}
