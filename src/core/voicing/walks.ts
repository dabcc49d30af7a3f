import type { Semitones } from '../harmony/pitch.ts';
import { type Candidate, type ChordToVoice, candidateLayers, isSilent } from './candidateLayers.ts';
import { stepsOf, type VoicingCourse } from './course.ts';
import { motion } from './motion.ts';
import { holdCost, stepCost } from './terms.ts';
import { keysOfHand, type Voicing, type VoicingSettings } from './voicing.ts';

/**
 * Total motion of the right hand from voicing to voicing, in semitones; in a loop with the way back
 * to the first. Empty voicings are passed over.
 */
export function totalMotion(voicings: readonly Voicing[], course: VoicingCourse): Semitones {
  const hands = voicings.filter((v) => v.length > 0).map((v) => keysOfHand(v, 'right'));
  return stepsOf(hands, course).reduce((total, [from, to]) => total + motion(from, to), 0);
}

/**
 * What a player does who knows every chord in root position only: for each chord the candidate with
 * its lowest degree at the bottom of the right hand, the nearest such to the chord before; the first
 * one is the most comfortable. Pinned chords stay as they are; N.C. gets the empty voicing.
 * Undefined where a chord has no candidates.
 */
export function rootPositionWalk(
  chords: readonly ChordToVoice[],
  settings: VoicingSettings,
): Voicing[] | undefined {
  return walk(candidateLayers(chords, settings).map(rootPositions), settings);
}

/**
 * What a player does who always goes to the nearest inversion, without looking ahead: for each chord
 * the candidate of least cost from the chord before; the first one is the most comfortable. Pinned
 * chords, N.C. and chords without candidates as in `rootPositionWalk`.
 */
export function nearestWalk(
  chords: readonly ChordToVoice[],
  settings: VoicingSettings,
): Voicing[] | undefined {
  return walk(candidateLayers(chords, settings), settings);
}

function walk(
  layers: readonly (readonly Candidate[])[],
  settings: VoicingSettings,
): Voicing[] | undefined {
  const voicings: Voicing[] = [];
  let before: Candidate | undefined;
  for (const layer of layers) {
    const next = cheapest(layer, before, settings);
    if (!next) return undefined;
    voicings.push(next.voicing);
    if (!isSilent(layer)) before = next;
  }
  return voicings;
}

/** The first of the cheapest candidates to move to; to begin with, of the cheapest to hold. */
function cheapest(
  layer: readonly Candidate[],
  before: Candidate | undefined,
  settings: VoicingSettings,
): Candidate | undefined {
  const costOf = (candidate: Candidate) =>
    holdCost(candidate, settings) + (before ? stepCost(before, candidate, settings.weights) : 0);
  return layer.reduce<Candidate | undefined>(
    (best, candidate) => (best && costOf(best) <= costOf(candidate) ? best : candidate),
    undefined,
  );
}

/** The candidates whose right hand stands on its lowest degree; all where none does, as in most open positions. */
function rootPositions(layer: readonly Candidate[]): readonly Candidate[] {
  const standing = layer.filter(({ voicing }) => {
    const [bottom, ...upper] = voicing.filter((note) => note.hand === 'right');
    return bottom !== undefined && upper.every((note) => bottom.degree < note.degree);
  });
  return standing.length > 0 ? standing : layer;
}
