import type { Section } from '../song/song.ts';
import { type Timeline, timelineOf } from '../song/timeline.ts';

/** A few bars to be heard by themselves: chords end to end that fill bars of a meter. */
export type Phrase = Pick<Section, 'meter' | 'barMeters' | 'slots'>;

const PHRASE = 'phrase';

/** The timeline of a phrase, one playing of one section. It takes the same road to sound as a song's timeline. */
export function phraseTimeline(phrase: Phrase): Timeline {
  const section: Section = {
    ...phrase,
    id: PHRASE,
    name: 'Phrase',
    kind: 'interlude',
    wash: 'straw',
  };
  return timelineOf({ sections: [section], form: [{ id: PHRASE, sectionId: PHRASE }] });
}
