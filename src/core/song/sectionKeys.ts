import { type AnalysedChord, analyse } from '../harmony/analysis.ts';
import { fifthsOf, type Key, sameKey } from '../harmony/key.ts';
import { suggestKeys } from '../harmony/keyGuess.ts';
import type { Section, Song } from './song.ts';

/** How sure a section must be of a key of its own, and how little the song's key may then explain it (house values). */
const OWN_KEY = { surest: 0.75, atMost: 0.05 } as const;

/** A section's key and its chords as they are understood, one entry for each slot, undefined for N.C. */
export type SectionAnalysis = {
  readonly key: Key;
  readonly chords: ReadonlyArray<AnalysedChord | undefined>;
};

/**
 * The key that a section is in: the song's, unless its chords speak clearly for another one with
 * another signature (a chorus a tone higher). A relative key shares its chords with the song's and so
 * does not count as another.
 */
export function sectionKey(section: Pick<Section, 'slots'>, songKey: Key): Key {
  const suggestions = suggestKeys(section.slots);
  const surest = suggestions[0];
  if (!surest || fifthsOf(surest.key) === fifthsOf(songKey)) return songKey;
  const home = suggestions.find(({ key }) => sameKey(key, songKey))?.confidence ?? 0;
  const isClear = surest.confidence >= OWN_KEY.surest && home <= OWN_KEY.atMost;
  return isClear ? surest.key : songKey;
}

/** Every section of the song (in the order of its sections, not of the form) with its key and analysed chords. */
export function analyseSections(song: Pick<Song, 'key' | 'sections'>): SectionAnalysis[] {
  return song.sections.map((section) => {
    const key = sectionKey(section, song.key);
    return {
      key,
      chords: analyse(
        section.slots.map((slot) => slot.chord),
        key,
      ),
    };
  });
}
