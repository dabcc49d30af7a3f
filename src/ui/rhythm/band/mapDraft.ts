import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import type { Key } from '../../../core/harmony/key.ts';
import type { BandMap, MappedSection } from '../../../core/rhythm/bandSong.ts';
import type { MapDraft } from '../../../core/rhythm/mappedSong.ts';
import { formatChart } from '../../../core/song/chart.ts';
import { inLinesOfFour } from '../../parts/chart/sectionText.ts';
import { KIND_NAMES } from '../../parts/song/songWords.ts';

/** Kinds in their order with a number where one comes more than once: “Verse”, “Bridge 2”. */
function sectionNames(sections: readonly Pick<MappedSection, 'kind'>[]): string[] {
  const counts = new Map<string, number>();
  return sections.map(({ kind }) => {
    const count = (counts.get(kind) ?? 0) + 1;
    counts.set(kind, count);
    return count === 1 ? KIND_NAMES[kind] : `${KIND_NAMES[kind]} ${count}`;
  });
}

/** A map as it is first shown, in one of its keys, to be corrected. */
export function draftOf({ tempo, sections, form }: BandMap, title: string, key: Key): MapDraft {
  const names = sectionNames(sections);
  return {
    title,
    key,
    tempo: { ...tempo, bpm: Math.round(tempo.bpm) },
    sections: sections.map(({ kind, meter, slots }, i) => ({
      name: names[i]!,
      kind,
      meter,
      chart: inLinesOfFour(formatChart(slots, meter)),
    })),
    form,
  };
}

/** What the chords of a section could be as well: “Am7: or C6, Asus4”, each chord once. */
export function alternativeWords({ slots }: Pick<MappedSection, 'slots'>): string[] {
  const seen = new Map<string, string[]>();
  for (const { chord, alternatives } of slots) {
    if (chord === 'no-chord') continue;
    const name = formatChordSymbol(chord);
    if (!seen.has(name)) seen.set(name, alternatives.map(formatChordSymbol));
  }
  return [...seen].map(([name, others]) => `${name}: or ${others.join(', ')}`);
}
