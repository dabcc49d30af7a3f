import type { Chord } from '../harmony/chord.ts';
import type { KeyNumber } from '../harmony/pitch.ts';
import { compareKeys, voicingOfKeys } from './candidates.ts';
import { rightHands } from './hands.ts';
import { heldKeys, type Voicing, type VoicingSettings } from './voicing.ts';

/**
 * The voicing with the right hand's next inversion up or down and the same left hand: of the right
 * hands that the settings allow for the chord, and that lie above the left hand, the one next to the
 * present one. Hands are compared by the mean of their keys, so a pinned one need not be among them.
 * Undefined at the end of the range.
 */
export function nextInversion(
  voicing: Voicing,
  chord: Chord,
  direction: 'up' | 'down',
  settings: VoicingSettings,
): Voicing | undefined {
  const { left, right } = heldKeys(voicing);
  const hands = rightHands(chord, settings)
    .filter((keys) => left.every((key) => key < keys[0]!))
    .toSorted(byHeight);
  const next =
    direction === 'up'
      ? hands.find((keys) => byHeight(keys, right) > 0)
      : hands.findLast((keys) => byHeight(keys, right) < 0);
  return next && voicingOfKeys(chord, { left, right: next });
}

function byHeight(a: readonly KeyNumber[], b: readonly KeyNumber[]): number {
  return meanOf(a) - meanOf(b) || compareKeys(a, b);
}

/** −∞ for a free hand, which lies below all others. */
function meanOf(keys: readonly KeyNumber[]): number {
  return keys.length === 0 ? -Infinity : keys.reduce((sum, key) => sum + key, 0) / keys.length;
}
