import type { ChordDegree } from '../harmony/chord.ts';
import type { KeyNumber, Semitones } from '../harmony/pitch.ts';

export type HandName = 'left' | 'right';

/** One note of a voicing; `degree` is its degree in the chord (the bass of a slash chord has the degree it has there, or 1). */
export type VoicedNote = {
  readonly keyNumber: KeyNumber;
  readonly degree: ChordDegree;
  readonly hand: HandName;
};

/** What both hands hold for one chord, low to high; empty for N.C. */
export type Voicing = readonly VoicedNote[];

/** How the right hand's chord is built. */
export type Manner = 'close' | 'open' | 'shell' | 'rootless';

/**
 * What the hands may do and what is weighed. Spans are the distance from a hand's lowest to its
 * highest note in semitones (12 an octave, 14 a ninth, 16 a tenth). Ranges are key numbers.
 */
export type VoicingSettings = {
  readonly manner: Manner;
  readonly spanSemitones: Semitones;
  readonly rightLowest: KeyNumber;
  readonly rightHighest: KeyNumber;
  readonly leftLowest: KeyNumber;
  readonly leftHighest: KeyNumber;
  /** What the left hand holds below: the bass note alone, with its octave or with its fifth. */
  readonly bass: 'single' | 'octave' | 'fifth';
};
