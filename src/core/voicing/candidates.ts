import type { Chord } from '../harmony/chord.ts';
import type { KeyNumber } from '../harmony/pitch.ts';
import { degreesOf } from './chordNotes.ts';
import { leftHands, rightHands } from './hands.ts';
import type { HandName, HeldKeys, VoicedNote, Voicing, VoicingSettings } from './voicing.ts';

/**
 * All voicings of a chord that two hands can play under the settings: every right hand of
 * `rightHands` with every left hand of `leftHands` that lies wholly below it. In ascending order of
 * the right hand's keys, then of the left hand's. N.C. has the one empty voicing; no voicings where
 * ranges or span leave nothing to play.
 */
export function voicingCandidates(chord: Chord | 'no-chord', settings: VoicingSettings): Voicing[] {
  if (chord === 'no-chord') return [[]];
  const lefts = leftHands(chord, settings).toSorted(compareKeys);
  const rights = rightHands(chord, settings).toSorted(compareKeys);
  const degreeOf = degreesOf(chord);
  return rights.flatMap((right) =>
    lefts
      .filter((left) => left.at(-1)! < right[0]!)
      .map((left) => [...notesOf('left', left, degreeOf), ...notesOf('right', right, degreeOf)]),
  );
}

/**
 * The voicing with just these keys, whatever the settings allow; keys that are foreign to the chord
 * get the degree that `degreesOf` says. Hands may cross. N.C. has no notes, and so keys none.
 */
export function voicingOfKeys(chord: Chord | 'no-chord', held: HeldKeys): Voicing {
  if (chord === 'no-chord') return [];
  const degreeOf = degreesOf(chord);
  return [
    ...notesOf('left', held.left, degreeOf),
    ...notesOf('right', held.right, degreeOf),
  ].toSorted((a, b) => a.keyNumber - b.keyNumber);
}

type DegreeOf = ReturnType<typeof degreesOf>;

function notesOf(hand: HandName, keys: readonly KeyNumber[], degreeOf: DegreeOf): VoicedNote[] {
  return keys.map((keyNumber) => ({ keyNumber, degree: degreeOf(keyNumber), hand }));
}

/** Order of two lists of keys: by the first key that differs, then the shorter first. */
export function compareKeys(a: readonly KeyNumber[], b: readonly KeyNumber[]): number {
  const place = a.findIndex((key, i) => key !== b[i]);
  return place < 0 || place >= b.length ? a.length - b.length : a[place]! - b[place]!;
}
