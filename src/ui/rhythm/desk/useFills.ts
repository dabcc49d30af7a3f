import { useDeferredValue, useMemo } from 'react';
import { offeredFills } from '../../../app/offeredFills.ts';
import { endingPhrase } from '../../../core/rhythm/endingPhrase.ts';
import {
  type Ending,
  endingBar,
  lastBarHands,
  type Pattern,
} from '../../../core/rhythm/pattern.ts';
import { useHandLimits } from '../../parts/pattern/useHandLimits.ts';
import { useHeardTempo } from '../../parts/pattern/useHeardTempo.ts';
import { useProject } from '../../parts/tool/useProject.ts';
import type { EndingKind } from './fillWords.ts';

/** An ending to be chosen: its bar, to be drawn, and the phrase in which it is heard. */
export type OfferedEnding = {
  readonly kind: EndingKind;
  readonly ending: Ending;
  readonly bar: Pattern;
  readonly phrase: Pattern;
};

/** What a pattern's ending can be at the tempo at which it is heard: as it is, as the last bar, or a fill (`offeredFills`). */
export function useFills(shown: Pattern): readonly OfferedEnding[] {
  const bpm = useHeardTempo();
  const limits = useHandLimits();
  // Whoever edits on the spine meanwhile sees the hit first.
  const project = useDeferredValue(useProject((whole) => whole));
  const pattern = useDeferredValue(shown);
  return useMemo(
    () =>
      [
        ...(pattern.ending ? [{ kind: 'as-it-is' as const, ending: pattern.ending }] : []),
        { kind: 'as-last-bar' as const, ending: lastBarHands(pattern) },
        ...offeredFills(project, pattern, bpm, limits),
      ].map(({ kind, ending }) => ({
        kind,
        ending,
        bar: endingBar({ ...pattern, ending }) ?? pattern,
        phrase: endingPhrase(pattern, ending),
      })),
    [project, pattern, bpm, limits],
  );
}
