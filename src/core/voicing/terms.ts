import type { KeyNumber, Semitones } from '../harmony/pitch.ts';
import { sortedMotion } from './motion.ts';
import { semitonesTooLow } from './playable.ts';
import type { HeldKeys, VoicingSettings, VoicingWeights } from './voicing.ts';

/** The widest distance between the hands that costs nothing: two octaves (our own choice). */
export const COMFORTABLE_HAND_GAP: Semitones = 24;

/**
 * What it costs to move from one chord's keys to the next one's, ≥ 0: each of these in semitones,
 * times its weight, added up. Symmetric; a hand that is free before or after moves nowhere.
 * - `motion`: `motion` of the right hand.
 * - `topLeap`: distance between the right hand's highest keys.
 * - `leftLeap`: distance between the left hand's lowest keys.
 */
export function stepCost(from: HeldKeys, to: HeldKeys, weights: VoicingWeights): number {
  return (
    weights.motion * sortedMotion(from.right, to.right) +
    weights.topLeap * distance(from.right.at(-1), to.right.at(-1)) +
    weights.leftLeap * distance(from.left[0], to.left[0])
  );
}

/**
 * What it costs to hold a chord's keys, ≥ 0: each of these in semitones, times its weight, added up.
 * - `register`: for each hand that holds something, the distance of its middle (half way between its
 *   lowest and highest key) from the middle of its range in the settings.
 * - `lowIntervals`: `semitonesTooLow` of both hands together.
 * - `handGap`: what the distance from the left hand's highest to the right hand's lowest key exceeds
 *   `COMFORTABLE_HAND_GAP`, or what it falls short of one semitone.
 */
export function holdCost(held: HeldKeys, settings: VoicingSettings): number {
  const { weights } = settings;
  const offCentre =
    offCentreBy(held.right, settings.rightLowest, settings.rightHighest) +
    offCentreBy(held.left, settings.leftLowest, settings.leftHighest);
  return (
    weights.register * offCentre +
    weights.lowIntervals * semitonesTooLow([...held.left, ...held.right]) +
    weights.handGap * handsOffBy(held)
  );
}

function distance(from: KeyNumber | undefined, to: KeyNumber | undefined): Semitones {
  return from === undefined || to === undefined ? 0 : Math.abs(from - to);
}

function offCentreBy(keys: readonly KeyNumber[], lowest: KeyNumber, highest: KeyNumber): Semitones {
  const [bottom, top] = [keys[0], keys.at(-1)];
  return bottom === undefined || top === undefined
    ? 0
    : Math.abs(bottom + top - lowest - highest) / 2;
}

function handsOffBy(held: HeldKeys): Semitones {
  const [top, bottom] = [held.left.at(-1), held.right[0]];
  if (top === undefined || bottom === undefined) return 0;
  const gap = bottom - top;
  return gap < 1 ? 1 - gap : Math.max(0, gap - COMFORTABLE_HAND_GAP);
}
