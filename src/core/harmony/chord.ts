import {
  type PitchClass,
  respelled,
  type Semitones,
  semitonesOf,
  transposePitchClass,
} from './pitch.ts';

/** Chord kinds up to the sixth or seventh; what lies above is a tension. */
export type ChordQuality =
  | 'major'
  | 'minor'
  | 'augmented'
  | 'diminished'
  | 'suspended-second'
  | 'suspended-fourth'
  | 'power'
  | 'major-sixth'
  | 'minor-sixth'
  | 'dominant-seventh'
  | 'major-seventh'
  | 'minor-seventh'
  | 'minor-major-seventh'
  | 'diminished-seventh'
  | 'half-diminished-seventh'
  | 'augmented-seventh'
  | 'augmented-major-seventh'
  | 'dominant-seventh-flat-five'
  | 'dominant-seventh-suspended-fourth';

export type Tension = '♭9' | '9' | '♯9' | '11' | '♯11' | '♭13' | '13';

/** A chord as a musician names it. `tensions` ascend without repeats; `bass` is the lowest note where it is not the root. */
export type Chord = {
  readonly root: PitchClass;
  readonly quality: ChordQuality;
  readonly tensions: readonly Tension[];
  readonly bass?: PitchClass;
};

/** Scale degree above the root by number: 1, 3, 5, 7 …; 9, 11 and 13 are tensions. */
export type ChordDegree = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 9 | 11 | 13;

/** One note of a chord: its degree, its distance above the root in semitones (0 to 21), its spelling. */
export type ChordTone = {
  readonly degree: ChordDegree;
  readonly semitones: Semitones;
  readonly pitchClass: PitchClass;
};

/** Intervals above the root, by quality (docs/sources.md#chord-formulae). */
export const QUALITY_INTERVALS: Readonly<Record<ChordQuality, readonly string[]>> = {
  major: ['1P', '3M', '5P'],
  minor: ['1P', '3m', '5P'],
  augmented: ['1P', '3M', '5A'],
  diminished: ['1P', '3m', '5d'],
  'suspended-second': ['1P', '2M', '5P'],
  'suspended-fourth': ['1P', '4P', '5P'],
  power: ['1P', '5P'],
  'major-sixth': ['1P', '3M', '5P', '6M'],
  'minor-sixth': ['1P', '3m', '5P', '6M'],
  'dominant-seventh': ['1P', '3M', '5P', '7m'],
  'major-seventh': ['1P', '3M', '5P', '7M'],
  'minor-seventh': ['1P', '3m', '5P', '7m'],
  'minor-major-seventh': ['1P', '3m', '5P', '7M'],
  'diminished-seventh': ['1P', '3m', '5d', '7d'],
  'half-diminished-seventh': ['1P', '3m', '5d', '7m'],
  'augmented-seventh': ['1P', '3M', '5A', '7m'],
  'augmented-major-seventh': ['1P', '3M', '5A', '7M'],
  'dominant-seventh-flat-five': ['1P', '3M', '5d', '7m'],
  'dominant-seventh-suspended-fourth': ['1P', '4P', '5P', '7m'],
};

export const TENSION_INTERVALS: Readonly<Record<Tension, string>> = {
  '♭9': '9m',
  '9': '9M',
  '♯9': '9A',
  '11': '11P',
  '♯11': '11A',
  '♭13': '13m',
  '13': '13M',
};

/** The chord's notes from the root up, tensions last; the bass of a slash chord is not among them unless it is a chord note. */
export function chordTones(chord: Chord): ChordTone[] {
  const intervals = [
    ...QUALITY_INTERVALS[chord.quality],
    ...chord.tensions.map((tension) => TENSION_INTERVALS[tension]),
  ];
  return intervals.map((interval) => ({
    degree: Number.parseInt(interval, 10) as ChordDegree,
    semitones: semitonesOf(interval),
    pitchClass: transposePitchClass(chord.root, interval),
  }));
}

/** The chord as it can be written: a root or bass that takes more than two signs is respelled. */
export function writableChord(chord: Chord): Chord {
  const root = respelled(chord.root);
  return chord.bass ? { ...chord, root, bass: respelled(chord.bass) } : { ...chord, root };
}
