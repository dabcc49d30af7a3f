import { type PitchClass, transposePitchClass } from './pitch.ts';

export type Mode = 'major' | 'minor';

/** A tonality, such as E♭ major. */
export type Key = { readonly tonic: PitchClass; readonly mode: Mode };

const SCALE_INTERVALS: Readonly<Record<Mode, readonly string[]>> = {
  major: ['1P', '2M', '3M', '4P', '5P', '6M', '7M'],
  minor: ['1P', '2M', '3m', '4P', '5P', '6m', '7m'],
};

const LETTER_FIFTHS = { F: -1, C: 0, G: 1, D: 2, A: 3, E: 4, B: 5 } as const;

/** The seven notes of the key's scale from the tonic up, spelled; minor is natural minor. */
export function scaleOf(key: Key): PitchClass[] {
  return SCALE_INTERVALS[key.mode].map((interval) => transposePitchClass(key.tonic, interval));
}

/**
 * The key signature: sharps positive, flats negative (E♭ major −3, A minor 0). Keys that would
 * need double signs lie outside −7…7.
 */
export function fifthsOf(key: Key): number {
  const major = LETTER_FIFTHS[key.tonic.letter] + 7 * key.tonic.alteration;
  return key.mode === 'major' ? major : major - 3;
}
