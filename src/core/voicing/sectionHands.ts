import type { Semitones } from '../harmony/pitch.ts';
import { ok, type Result } from '../result.ts';
import type { ChordToVoice } from './candidateLayers.ts';
import { voiceSection } from './voiceTimeline.ts';
import type { Voicing, VoicingSettings } from './voicing.ts';
import { nearestWalk, rootPositionWalk, totalMotion } from './walks.ts';

/** How far the right hand moves in one round of a section, as it is and as other players would. */
export type Motions = {
  readonly here: Semitones;
  readonly inRootPosition: Semitones | undefined;
  readonly nearestEachTime: Semitones | undefined;
};

/** The hands of a section's chords, one voicing for each. */
export type SectionHands = {
  readonly voicings: readonly Voicing[];
  readonly motions: Motions;
};

/** What hands are to be found for: the chords of a section in order, and what the hands may do. */
export type HandsQuestion = {
  readonly chords: readonly ChordToVoice[];
  readonly settings: VoicingSettings;
};

/** The hands, or the place (0-based) of the first chord that two hands can't play under the settings. */
export type HandsAnswer = Result<SectionHands, { readonly place: number }>;

function motionIn(voicings: readonly Voicing[] | undefined): Semitones | undefined {
  return voicings && totalMotion(voicings, 'loop');
}

/**
 * The hands of least cost for a section as a loop (`voiceSection`), and the right hand's total motion
 * in them beside that of `rootPositionWalk` and `nearestWalk`.
 */
export function sectionHands({ chords, settings }: HandsQuestion): HandsAnswer {
  const hands = voiceSection(chords, settings, 'loop');
  if (!hands.ok) return hands;
  return ok({
    voicings: hands.value,
    motions: {
      here: totalMotion(hands.value, 'loop'),
      inRootPosition: motionIn(rootPositionWalk(chords, settings)),
      nearestEachTime: motionIn(nearestWalk(chords, settings)),
    },
  });
}
