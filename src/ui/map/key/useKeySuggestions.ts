import { useDeferredValue, useMemo } from 'react';
import { type KeySuggestion, suggestKeys } from '../../../core/harmony/keyGuess.ts';
import { selectTimeline } from '../../../state/selectors.ts';
import { useProject } from '../../parts/tool/useProject.ts';

/**
 * The keys that the chords of the song, as they are played, may be in; surest first. Weighing a long
 * song takes longer than a frame, so what was written is drawn first.
 */
export function useKeySuggestions(): readonly KeySuggestion[] {
  const { chords } = useDeferredValue(useProject(selectTimeline));
  return useMemo(
    () =>
      suggestKeys(
        chords.map(({ chord, startTick, endTick }) => ({
          chord,
          durationTicks: endTick - startTick,
        })),
      ),
    [chords],
  );
}
