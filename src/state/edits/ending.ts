import type { FormEntryId } from '../../core/ids.ts';
import { sectionBars } from '../../core/song/form.ts';
import type { OtherEnding, Section, Song } from '../../core/song/song.ts';
import type { Meter } from '../../core/time/meter.ts';
import { fillsBars } from '../../formats/projectFaults.ts';
import { brought, type Edit, mapped, withParts } from './edit.ts';
import { refitChart, refittedBarCounts } from './refitChart.ts';
import { inForm } from './song.ts';

function withEnding(song: Song, id: FormEntryId, ending: OtherEnding | undefined): Song {
  return withParts(song, {
    form: mapped(song.form, (entry) => (entry.id === id ? withParts(entry, { ending }) : entry)),
  });
}

/**
 * Ends the section of one form entry with other bars, as `parseChartBars` reads them in the section's
 * meter. How many bars they replace is brought to a whole number that the section has. Nothing where
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
    return withEnding(song, id, { replacesBars, slots, barMeters });
  });
}

/** Ends the section of one form entry as the section is written. */
export function clearEntryEnding(id: FormEntryId): Edit {
  return inForm((song) => withEnding(song, id, undefined));
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
