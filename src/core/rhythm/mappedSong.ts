import type { Key } from '../harmony/key.ts';
import { err, ok, type Result } from '../result.ts';
import { parseChartBars } from '../song/chart.ts';
import type { ChartError } from '../song/chartBar.ts';
import { type FormEntry, type Section, type SectionKind, type Song, WASHES } from '../song/song.ts';
import type { Meter } from '../time/meter.ts';
import type { Tempo } from '../time/tempoMap.ts';

/** A section of a map as it is corrected: its chart as text. */
export type SectionDraft = {
  readonly name: string;
  readonly kind: SectionKind;
  readonly meter: Meter;
  readonly chart: string;
};

/** A map with everything that was corrected in it; `form` lists sections by place. */
export type MapDraft = {
  readonly title: string;
  readonly key: Key;
  readonly tempo: Tempo;
  readonly sections: readonly SectionDraft[];
  readonly form: readonly number[];
};

/** Which section's chart can't be read, and why. */
export type MapFault = { readonly section: number; readonly error: ChartError };

/**
 * Key, tempo, sections and form of a map as a song has them; `newId` gives a fresh identity each time it is called.
 * The first chart that cannot be read is the error.
 */
export function songOfMap(
  { title, key, tempo, sections, form }: MapDraft,
  newId: () => string,
): Result<Pick<Song, 'title' | 'key' | 'tempo' | 'sections' | 'form'>, MapFault> {
  const made: Section[] = [];
  for (const [place, { name, kind, meter, chart }] of sections.entries()) {
    const read = parseChartBars(chart, meter, key);
    if (!read.ok) return err({ section: place, error: read.error });
    const wash = WASHES[place % WASHES.length]!;
    made.push({ id: newId(), name, kind, wash, meter, ...read.value });
  }
  const entries: FormEntry[] = form.flatMap((place) => {
    const section = made[place];
    return section ? [{ id: newId(), sectionId: section.id }] : [];
  });
  return ok({ title, key, tempo, sections: made, form: entries });
}
