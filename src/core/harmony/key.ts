import { type PitchClass, samePitchClass, transposePitchClass } from './pitch.ts';

export const MODES = ['major', 'minor'] as const;

export type Mode = (typeof MODES)[number];

/** A tonality, such as E♭ major. */
export type Key = { readonly tonic: PitchClass; readonly mode: Mode };

/** Whether two keys have the same tonic, spelled alike, and the same mode. */
export function sameKey(a: Key, b: Key): boolean {
  return samePitchClass(a.tonic, b.tonic) && a.mode === b.mode;
}

/** Which sixth and seventh a minor scale has: both low, the seventh raised, or both raised. */
export type MinorForm = 'natural' | 'harmonic' | 'melodic';

const MAJOR_SCALE = ['1P', '2M', '3M', '4P', '5P', '6M', '7M'] as const;

const MINOR_SCALES: Readonly<Record<MinorForm, readonly string[]>> = {
  natural: ['1P', '2M', '3m', '4P', '5P', '6m', '7m'],
  harmonic: ['1P', '2M', '3m', '4P', '5P', '6m', '7M'],
  melodic: ['1P', '2M', '3m', '4P', '5P', '6M', '7M'],
};

const LETTER_FIFTHS = { F: -1, C: 0, G: 1, D: 2, A: 3, E: 4, B: 5 } as const;

/** The seven notes of the key's scale from the tonic up, spelled. The form has no effect in major. */
export function scaleOf(key: Key, minorForm: MinorForm = 'natural'): PitchClass[] {
  const intervals = key.mode === 'major' ? MAJOR_SCALE : MINOR_SCALES[minorForm];
  return intervals.map((interval) => transposePitchClass(key.tonic, interval));
}

/**
 * The key signature: sharps positive, flats negative (E♭ major −3, A minor 0). Keys that would
 * need double signs lie outside −7…7.
 */
export function fifthsOf(key: Key): number {
  const major = LETTER_FIFTHS[key.tonic.letter] + 7 * key.tonic.alteration;
  return key.mode === 'major' ? major : major - 3;
}

/** The key itself where its signature has at most seven signs, otherwise the same key spelled so (G♯ major → A♭ major). */
export function writableKey(key: Key): Key {
  const fifths = fifthsOf(key);
  if (fifths > 7) return writableKey({ ...key, tonic: transposePitchClass(key.tonic, '2d') });
  if (fifths < -7) return writableKey({ ...key, tonic: transposePitchClass(key.tonic, '-2d') });
  return key;
}

/** The key with the same signature in the other mode: C major and A minor. */
export function relativeKey(key: Key): Key {
  return key.mode === 'major'
    ? { tonic: transposePitchClass(key.tonic, '-3m'), mode: 'minor' }
    : { tonic: transposePitchClass(key.tonic, '3m'), mode: 'major' };
}

/** The key on the same tonic in the other mode, not respelled: D♭ major gives D♭ minor, eight flats. */
export function parallelKey(key: Key): Key {
  return { tonic: key.tonic, mode: key.mode === 'major' ? 'minor' : 'major' };
}
