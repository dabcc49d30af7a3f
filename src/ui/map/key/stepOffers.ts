import type { Key, MinorForm } from '../../../core/harmony/key.ts';
import {
  diatonicSevenths,
  diatonicTriads,
  type KeyChord,
  secondaryDominants,
  tritoneSubstitutes,
} from '../../../core/harmony/keyChords.ts';
import { samePitchClass } from '../../../core/harmony/pitch.ts';
import type { DegreeStep } from '../../../core/harmony/scaleDegree.ts';

/**
 * What a key offers on one step of its scale: triad and seventh, and, where something can lead there,
 * the dominant of the step with its tritone substitute.
 */
export type StepOffers = {
  readonly triad: KeyChord;
  readonly seventh: KeyChord;
  readonly dominant?: KeyChord;
  readonly substitute?: KeyChord;
};

function sameStep(a: DegreeStep | undefined, b: DegreeStep | undefined): boolean {
  return a?.degree === b?.degree && a?.alteration === b?.alteration;
}

/**
 * The offers on the seven steps of a key, from the tonic up; in minor on those of a form of its scale.
 * To the tonic leads the key's own dominant. Diminished and augmented triads are not led to; nor, in
 * the other forms of minor, are steps that are not the natural ones.
 */
export function stepOffers(key: Key, minorForm: MinorForm): StepOffers[] {
  const sevenths = diatonicSevenths(key, minorForm);
  const home: KeyChord = {
    ...diatonicSevenths(key, 'harmonic')[4]!,
    target: { root: key.tonic, quality: key.mode, tensions: [] },
  };
  const dominants = [home, ...secondaryDominants(key)];
  const substitutes = tritoneSubstitutes(key);
  return diatonicTriads(key, minorForm).map((triad, step) => {
    const { root, quality } = triad.chord;
    const dominant = dominants.find(({ target }) => target && samePitchClass(target.root, root));
    const substitute = substitutes.find(
      ({ numeral }) => dominant && sameStep(numeral.of, dominant.numeral.of),
    );
    const isLedTo = quality === 'major' || quality === 'minor';
    return {
      triad,
      seventh: sevenths[step]!,
      ...(isLedTo && dominant && { dominant }),
      ...(isLedTo && substitute && { substitute }),
    };
  });
}
