import { fifthsOf, type Key } from './key.ts';
import { chromaOf, type PitchClass, type Semitones } from './pitch.ts';

/** Places of the plain letters on the line of fifths, C = 0. */
const LETTER_FIFTHS: Readonly<Record<PitchClass['letter'], number>> = {
  F: -1,
  C: 0,
  G: 1,
  D: 2,
  A: 3,
  E: 4,
  B: 5,
};

/** A major scale lies from one fifth under its tonic to five over it; its middle is this far up. */
const MIDDLE_OF_SCALE = 2;

const SPELLINGS: readonly PitchClass[] = (
  Object.keys(LETTER_FIFTHS) as PitchClass['letter'][]
).flatMap((letter) => [-1, 0, 1].map((alteration) => ({ letter, alteration })));

function fifthsFromC({ letter, alteration }: PitchClass): number {
  return LETTER_FIFTHS[letter] + 7 * alteration;
}

/**
 * The name of a place in the octave above C (0 to 11) in a key: of its spellings with one sign at the most the one that
 * lies nearest to the scale on the line of fifths, the flatter of two (after Temperley 2001).
 */
export function spelledInKey(chroma: Semitones, key: Key): PitchClass {
  const middle = fifthsOf(key) + MIDDLE_OF_SCALE;
  const named = SPELLINGS.filter((pitchClass) => chromaOf(pitchClass) === chroma);
  const far = (pitchClass: PitchClass) => Math.abs(fifthsFromC(pitchClass) - middle);
  return named.reduce((best, next) => {
    const nearer = far(best) - far(next);
    return nearer > 0 || (nearer === 0 && fifthsFromC(next) < fifthsFromC(best)) ? next : best;
  });
}

/** All tonics with one sign at the most that lie on the same keys of the piano. */
function sameTonics({ tonic }: Key): PitchClass[] {
  return SPELLINGS.filter((pitchClass) => chromaOf(pitchClass) === chromaOf(tonic));
}

/**
 * A key with as few signs as it can be written with: D♭ major for C♯ major. Of six sharps and six flats sharps are
 * taken in major and flats in minor (common practice).
 */
export function plainestKey(key: Key): Key {
  const signs = (tonic: PitchClass) => fifthsOf({ ...key, tonic });
  const preference = (tonic: PitchClass) =>
    Math.abs(signs(tonic)) + (signs(tonic) < 0 === (key.mode === 'minor') ? 0 : 0.5);
  const tonic = sameTonics(key).reduce((best, next) =>
    preference(next) < preference(best) ? next : best,
  );
  return { ...key, tonic };
}
