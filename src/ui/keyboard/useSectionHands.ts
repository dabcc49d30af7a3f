import { useMemo } from 'react';
import type { Semitones } from '../../core/harmony/pitch.ts';
import type { Result } from '../../core/result.ts';
import type { Section } from '../../core/song/song.ts';
import { voiceSection } from '../../core/voicing/voiceTimeline.ts';
import type { Voicing } from '../../core/voicing/voicing.ts';
import { nearestWalk, rootPositionWalk, totalMotion } from '../../core/voicing/walks.ts';
import { useProject } from '../useProject.ts';

/** How far the right hand moves in one round of a section, as it is and as other players would. */
export type Motions = {
  readonly here: Semitones;
  readonly inRootPosition: Semitones | undefined;
  readonly nearestEachTime: Semitones | undefined;
};

export type SectionHands = {
  readonly voicings: readonly Voicing[];
  readonly motions: Motions;
};

/**
 * The hands of the chords of a section as some playing plays it (`ownChart`), slot by slot, the same
 * wherever it returns; or the slot that can't be played.
 */
export function useSectionHands({
  slots,
}: Section): Result<SectionHands, { readonly place: number }> {
  const settings = useProject((project) => project.voicing);
  return useMemo(() => {
    const hands = voiceSection(slots, settings, 'loop');
    if (!hands.ok) return hands;
    const motionOf = (voicings: readonly Voicing[] | undefined) =>
      voicings && totalMotion(voicings, 'loop');
    return {
      ok: true as const,
      value: {
        voicings: hands.value,
        motions: {
          here: totalMotion(hands.value, 'loop'),
          inRootPosition: motionOf(rootPositionWalk(slots, settings)),
          nearestEachTime: motionOf(nearestWalk(slots, settings)),
        },
      },
    };
  }, [slots, settings]);
}

/** The voicing that follows one in a round, N.C. passed over; undefined where it is the only one. */
export function voicingAfter(voicings: readonly Voicing[], slot: number): Voicing | undefined {
  const later = [...voicings.slice(slot + 1), ...voicings.slice(0, slot)];
  return later.find((voicing) => voicing.length > 0);
}
