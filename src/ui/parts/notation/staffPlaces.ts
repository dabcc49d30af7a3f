import { fifthsOf, type Key, writableKey } from '../../../core/harmony/key.ts';
import { LETTERS, type Letter, type Pitch } from '../../../core/harmony/pitch.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';

/** A place on a staff in half spaces above its middle line: 4 is the top line, −5 hangs under the bottom one. */
export type StaffPlace = number;

/** Steps of the scale from C0 to the middle line: B4 under the treble clef, D3 under the bass clef. */
const MIDDLE_LINE: Readonly<Record<HandName, number>> = { right: 34, left: 22 };

function stepsFromC0({ letter, octave }: Pick<Pitch, 'letter' | 'octave'>): number {
  return 7 * octave + LETTERS.indexOf(letter);
}

/** Where a pitch stands on a hand's staff: treble clef for the right, bass clef for the left. */
export function staffPlace(pitch: Pick<Pitch, 'letter' | 'octave'>, hand: HandName): StaffPlace {
  return stepsFromC0(pitch) - MIDDLE_LINE[hand];
}

/** The natural pitch at a place on a hand's staff. */
export function pitchAtPlace(
  place: StaffPlace,
  hand: HandName,
): { readonly letter: Letter; readonly octave: number } {
  const steps = place + MIDDLE_LINE[hand];
  return { letter: LETTERS[((steps % 7) + 7) % 7]!, octave: Math.floor(steps / 7) };
}

/** Order of the signs in a key signature, and the usual octave of each on the treble staff (common practice). */
const SIGNATURE = {
  sharps: { letters: ['F', 'C', 'G', 'D', 'A', 'E', 'B'], octaves: [5, 5, 5, 5, 4, 5, 4] },
  flats: { letters: ['B', 'E', 'A', 'D', 'G', 'C', 'F'], octaves: [4, 5, 4, 5, 4, 5, 4] },
} as const;

/** One sign of a key signature: 1 for a sharp, −1 for a flat, which letter, where on the treble staff. */
export type SignatureSign = {
  readonly letter: Letter;
  readonly alteration: 1 | -1;
  readonly place: StaffPlace;
};

/** The key signature's signs in order; on the bass staff they stand two half spaces lower. Keys of more than seven signs are respelled. */
export function signatureSigns(key: Key): SignatureSign[] {
  const fifths = fifthsOf(writableKey(key));
  const { letters, octaves } = fifths < 0 ? SIGNATURE.flats : SIGNATURE.sharps;
  return letters.slice(0, Math.abs(fifths)).map((letter, i) => ({
    letter,
    alteration: fifths < 0 ? -1 : 1,
    place: staffPlace({ letter, octave: octaves[i]! }, 'right'),
  }));
}

/** How much lower the key signature stands on the bass staff, in half spaces. */
export const BASS_SIGNATURE_DROP = 2;
