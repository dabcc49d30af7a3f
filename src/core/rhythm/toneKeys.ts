import { type Chord, type ChordDegree, chordTones } from '../harmony/chord.ts';
import { chromaOf, type KeyNumber, type Semitones } from '../harmony/pitch.ts';
import { unreachable } from '../result.ts';
import { type BassTone, VOICE_TONES, type VoiceTone } from './tones.ts';

/** Lowest note of a four-string bass, E1: a fifth below the root is not taken lower than this. */
export const LOWEST_FIFTH_BELOW: KeyNumber = 28;

const HIGHEST_KEY: KeyNumber = 108;
const OCTAVE: Semitones = 12;

/** The degrees that a bass tone can ask for, in semitones above the chord's root. */
type BassDegrees = {
  readonly third: Semitones;
  readonly fifth: Semitones;
  readonly sixth: Semitones;
  readonly seventh: Semitones;
};

/**
 * Semitones above the root that the bass degrees have in a chord (common practice).
 * Third: the chord's own; the fourth or second of a suspended chord; the root of a power chord.
 * Fifth: the chord's own, diminished or augmented where the chord's is.
 * Sixth: the chord's own, otherwise the major sixth of boogie and dorian lines; the minor sixth over
 * a half-diminished chord, where the major one is foreign to the key.
 * Seventh: the chord's own; in a sixth chord the sixth; over a diminished triad the diminished
 * seventh; over any other chord the minor seventh of the blues.
 */
export function degreesOfBass(chord: Chord): BassDegrees {
  const sizes = new Map<ChordDegree, Semitones>(
    chordTones(chord).map((tone) => [tone.degree, tone.semitones]),
  );
  const fifth = sizes.get(5) ?? 7;
  const sixth = chord.quality === 'half-diminished-seventh' ? 8 : 9;
  return {
    third: sizes.get(3) ?? sizes.get(4) ?? sizes.get(2) ?? 0,
    fifth,
    sixth: sizes.get(6) ?? sixth,
    seventh: sizes.get(7) ?? sizes.get(6) ?? (chord.quality === 'diminished' ? 9 : 10),
  };
}

/**
 * The keys that a bass tone plays over the bass keys a hand (or a bass player) holds for a chord.
 * `root` is all of them, `octave` the lowest an octave up. Degrees count from the chord's root
 * (over C/E the fifth is G) and lie above the lowest key, within an octave, the tenth in the
 * octave after. `fifth-below` is the nearest fifth under the lowest key, or the fifth above where
 * that would fall under E1 (28). `approach` is the key a semitone under `nextBass`, where the part
 * goes next. No keys held, nothing played.
 */
export function bassKeys(
  tone: BassTone,
  chord: Chord,
  held: readonly KeyNumber[],
  nextBass: KeyNumber,
): KeyNumber[] {
  const bass = held[0];
  if (bass === undefined) return [];
  const degrees = degreesOfBass(chord);
  switch (tone) {
    case 'root':
      return [...held];
    case 'octave':
      return [bass + OCTAVE];
    case 'third':
    case 'fifth':
    case 'sixth':
    case 'seventh':
      return [degreeAbove(bass, chord, degrees[tone])];
    case 'tenth':
      return [bass + OCTAVE + stepUp(bass, chord, degrees.third)];
    case 'fifth-below':
      return [fifthBelow(bass, chord, degrees.fifth)];
    case 'approach':
      return [nextBass - 1];
    default:
      return unreachable(tone);
  }
}

/** Semitones from a key up to the nearest note of the given size above the chord's root, 0 to 11. */
function stepUp(from: KeyNumber, chord: Chord, size: Semitones): Semitones {
  return (((chromaOf(chord.root) + size - from) % OCTAVE) + OCTAVE) % OCTAVE;
}

function degreeAbove(bass: KeyNumber, chord: Chord, size: Semitones): KeyNumber {
  return bass + (stepUp(bass, chord, size) || OCTAVE);
}

function fifthBelow(bass: KeyNumber, chord: Chord, fifth: Semitones): KeyNumber {
  const below = bass - OCTAVE + stepUp(bass, chord, fifth);
  return below >= LOWEST_FIFTH_BELOW ? below : degreeAbove(bass, chord, fifth);
}

/**
 * The keys that a voice tone plays out of the held ones (low to high): all, the highest, the ones
 * between highest and lowest, the lowest, all but the lowest, or the nth from the bottom. Voices
 * beyond the last go on an octave up, as far as the keyboard reaches. Where a chord is too small
 * to have middle or upper voices its lowest note stands for them. No keys held, nothing played.
 */
export function voiceKeys(tone: VoiceTone, held: readonly KeyNumber[]): KeyNumber[] {
  const lowest = held.slice(0, 1);
  switch (tone) {
    case 'all':
      return [...held];
    case 'top':
      return held.slice(-1);
    case 'bottom':
      return lowest;
    case 'middle':
      return held.length > 2 ? held.slice(1, -1) : lowest;
    case 'upper':
      return held.length > 1 ? held.slice(1) : lowest;
    default:
      return held.length > 0 ? [nthVoice(voiceNumber(tone), held)] : [];
  }
}

function voiceNumber(tone: VoiceTone): number {
  return VOICE_TONES.indexOf(tone) - VOICE_TONES.indexOf('voice-1');
}

function nthVoice(n: number, held: readonly KeyNumber[]): KeyNumber {
  const key = held[n % held.length]! + OCTAVE * Math.floor(n / held.length);
  return key > HIGHEST_KEY ? key - OCTAVE * Math.ceil((key - HIGHEST_KEY) / OCTAVE) : key;
}

/** Whether a tone is one out of a chord's voices rather than a bass tone. */
export function isVoiceTone(tone: string): tone is VoiceTone {
  return (VOICE_TONES as readonly string[]).includes(tone);
}
