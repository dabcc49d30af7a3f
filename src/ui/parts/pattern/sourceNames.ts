import type { Source, SourcePart } from '../../../core/rhythm/sources.ts';

/** What each part of the band is called on the page. */
export const PART_NAMES: Readonly<Record<SourcePart, string>> = {
  bass: 'bass',
  picking: 'picking',
  strumming: 'strumming',
  sung: 'sung line',
  kick: 'kick',
  snare: 'snare',
  'hi-hat': 'hi-hat',
  tom: 'toms',
  cymbal: 'cymbals',
  percussion: 'percussion',
};

/** A source by the name that its track has, or else by its part. */
export function sourceName({ name, part }: Pick<Source, 'name' | 'part'>): string {
  return name.trim() || PART_NAMES[part];
}
