import {
  above,
  type HeardChord,
  type HeardLine,
  type HeardNote,
  isDominantSeventh,
} from './heardChords.ts';
import { type Key, type MinorForm, type Mode, parallelKey, scaleOf } from './key.ts';
import { APPLIED_TARGETS } from './keyChords.ts';
import { type NumeralTarget, targetKey } from './numerals.ts';
import { chromaOf, type PitchClass, type Semitones } from './pitch.ts';

/** The steps of one form of a scale, spelled and as places in the octave. */
export type Scale = ReadonlyArray<{ readonly note: PitchClass; readonly chroma: Semitones }>;

/** A step that chords can be applied to; a visiting one belongs to the parallel key and must really follow. */
export type Target = {
  readonly of: NumeralTarget;
  readonly root: Semitones;
  readonly isVisiting: boolean;
};

/** A key with all that reading chords in it needs. */
export type KeyReading = {
  readonly key: Key;
  readonly tonic: Semitones;
  readonly scales: readonly Scale[];
  readonly melodicScales: readonly Scale[];
  readonly parallelScales: readonly Scale[];
  readonly targets: readonly Target[];
  readonly isBlues: boolean;
};

const VISITING_TARGETS: Readonly<Record<Mode, readonly NumeralTarget[]>> = {
  major: [
    { degree: 3, alteration: -1, mode: 'major' },
    { degree: 4, alteration: 0, mode: 'minor' },
    { degree: 6, alteration: -1, mode: 'major' },
    { degree: 7, alteration: -1, mode: 'major' },
  ],
  minor: [],
};

function scalesIn(key: Key, forms: readonly MinorForm[]): Scale[] {
  const used = key.mode === 'major' ? forms.slice(0, 1) : forms;
  return used.map((form) => scaleOf(key, form).map((note) => ({ note, chroma: chromaOf(note) })));
}

function targetsOf(key: Key): Target[] {
  const withRoot = (isVisiting: boolean) => (of: NumeralTarget) => ({
    of,
    root: chromaOf(targetKey(of, key).tonic),
    isVisiting,
  });
  return [
    ...APPLIED_TARGETS[key.mode].map(withRoot(false)),
    ...VISITING_TARGETS[key.mode].map(withRoot(true)),
  ];
}

/** A key made ready to read the chords of a line in it. */
export function keyReading(key: Key, line: HeardLine): KeyReading {
  const tonic = chromaOf(key.tonic);
  const hasSeventhOn = (root: Semitones) =>
    line.some((chord) => chord?.root === root && isDominantSeventh(chord));
  return {
    key,
    tonic,
    scales: scalesIn(key, ['natural', 'harmonic']),
    melodicScales: key.mode === 'minor' ? scalesIn(key, ['melodic']) : [],
    parallelScales: scalesIn(parallelKey(key), ['natural', 'harmonic']),
    targets: targetsOf(key),
    isBlues: key.mode === 'major' && hasSeventhOn(tonic) && hasSeventhOn(above(tonic, 5)),
  };
}

function standsOn(step: number, notes: readonly HeardNote[], scale: Scale): boolean {
  return notes.every((note) => scale[(step + note.steps) % 7]?.chroma === note.chroma);
}

/**
 * The step on which a chord stands in the first of the scales that it is built from, as that scale
 * spells it; each chord note must be the scale's own step (A♭ minor is not of C harmonic minor, though
 * its three keys are).
 */
export function stepInScales(
  { notes }: HeardChord,
  scales: readonly Scale[],
): PitchClass | undefined {
  for (const scale of scales) {
    const step = scale.findIndex((_note, i) => standsOn(i, notes, scale));
    if (step >= 0) return scale[step]?.note;
  }
  return undefined;
}
