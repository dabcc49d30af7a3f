import { type Chord, type ChordQuality, QUALITY_INTERVALS } from './chord.ts';
import { type Key, type MinorForm, type Mode, scaleOf } from './key.ts';
import {
  chordOfNumeral,
  type Numeral,
  type NumeralTarget,
  numeralOf,
  targetKey,
} from './numerals.ts';
import {
  chromaOf,
  fewestSigns,
  type PitchClass,
  semitonesOf,
  transposePitchClass,
} from './pitch.ts';

/** A chord as a key offers it, with its numeral there; `target` is the triad that it leads to. */
export type KeyChord = {
  readonly chord: Chord;
  readonly numeral: Numeral;
  readonly target?: Chord;
};

/** What stacked thirds of a scale can be. */
const STACKED_QUALITIES: readonly ChordQuality[] = [
  'major',
  'minor',
  'diminished',
  'augmented',
  'major-seventh',
  'minor-seventh',
  'dominant-seventh',
  'minor-major-seventh',
  'half-diminished-seventh',
  'diminished-seventh',
  'augmented-major-seventh',
];

function qualityOf(notes: readonly PitchClass[]): ChordQuality {
  const root = notes[0]!;
  const sizes = notes.map((note) => (chromaOf(note) - chromaOf(root) + 12) % 12).join();
  const quality = STACKED_QUALITIES.find(
    (candidate) => QUALITY_INTERVALS[candidate].map(semitonesOf).join() === sizes,
  );
  if (!quality) throw new Error(`no chord is built of ${sizes} semitones`);
  return quality;
}

function stackedThirds(key: Key, minorForm: MinorForm, size: 3 | 4): KeyChord[] {
  const scale = scaleOf(key, minorForm);
  return scale.map((root, step) => {
    const notes = Array.from({ length: size }, (_, third) => scale[(step + 2 * third) % 7]!);
    const chord: Chord = { root, quality: qualityOf(notes), tensions: [] };
    return { chord, numeral: numeralOf(chord, key) };
  });
}

/**
 * The triads on the seven steps of the key, from the tonic up, with their numerals: I ii iii IV V vi
 * vii° in major. Minor is natural unless another form is asked for; in major the form has no effect.
 */
export function diatonicTriads(key: Key, minorForm: MinorForm = 'natural'): KeyChord[] {
  return stackedThirds(key, minorForm, 3);
}

/** The seventh chords on the seven steps of the key, as `diatonicTriads` gives the triads. */
export function diatonicSevenths(key: Key, minorForm: MinorForm = 'natural'): KeyChord[] {
  return stackedThirds(key, minorForm, 4);
}

/**
 * The steps that a key's chords can be applied to: major and minor triads other than the tonic. The
 * fifth of minor is the major triad of harmonic minor; diminished triads are not led to.
 */
export const APPLIED_TARGETS: Readonly<Record<Mode, readonly NumeralTarget[]>> = {
  major: [
    { degree: 2, alteration: 0, mode: 'minor' },
    { degree: 3, alteration: 0, mode: 'minor' },
    { degree: 4, alteration: 0, mode: 'major' },
    { degree: 5, alteration: 0, mode: 'major' },
    { degree: 6, alteration: 0, mode: 'minor' },
  ],
  minor: [
    { degree: 3, alteration: 0, mode: 'major' },
    { degree: 4, alteration: 0, mode: 'minor' },
    { degree: 5, alteration: 0, mode: 'major' },
    { degree: 6, alteration: 0, mode: 'major' },
    { degree: 7, alteration: 0, mode: 'major' },
  ],
};

/** The triad on the step that a chord is applied to. */
export function targetTriad(target: NumeralTarget, key: Key): Chord {
  const { tonic, mode } = targetKey(target, key);
  return { root: tonic, quality: mode, tensions: [] };
}

const DOMINANT = { degree: 5, alteration: 0, quality: 'dominant-seventh', tensions: [] } as const;

/**
 * The applied dominants of a key: for each step that can be led to (ii iii IV V vi in major, III iv V
 * VI VII in minor) the dominant seventh a fifth above it, as V7/ii, with that step's triad as target.
 */
export function secondaryDominants(key: Key): KeyChord[] {
  return APPLIED_TARGETS[key.mode].map((of) => {
    const numeral = { ...DOMINANT, of };
    return { chord: chordOfNumeral(numeral, key), numeral, target: targetTriad(of, key) };
  });
}

/**
 * The dominant seventh a tritone away, which has the same third and seventh: D♭7 for G7. Its root is
 * the diminished fifth, spelled with fewer signs where that is C♭, F♭ or takes two flats (B7 for F7).
 * Tensions and bass are left out; undefined for a chord that is no plain dominant seventh.
 */
export function tritoneSubstitute(chord: Chord): Chord | undefined {
  if (chord.quality !== 'dominant-seventh') return undefined;
  const root = fewestSigns(transposePitchClass(chord.root, '5d'));
  return { root, quality: 'dominant-seventh', tensions: [] };
}

/**
 * The tritone substitutes of the key's dominant and of its applied dominants, as ♭II7 and ♭II7/ii,
 * with the triad that each leads to a semitone below.
 */
export function tritoneSubstitutes(key: Key): KeyChord[] {
  const flatTwo = { degree: 2, alteration: -1, quality: 'dominant-seventh', tensions: [] } as const;
  const tonic: Chord = { root: key.tonic, quality: key.mode, tensions: [] };
  const dominant = chordOfNumeral(DOMINANT, key);
  const home = { chord: tritoneSubstitute(dominant)!, numeral: flatTwo, target: tonic };
  const applied = secondaryDominants(key).map(({ chord, numeral, target }) => ({
    chord: tritoneSubstitute(chord)!,
    numeral: { ...flatTwo, ...(numeral.of ? { of: numeral.of } : {}) },
    ...(target ? { target } : {}),
  }));
  return [home, ...applied];
}
