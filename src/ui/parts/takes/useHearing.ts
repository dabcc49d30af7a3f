import { useSyncExternalStore } from 'react';
import type { LatencyState } from '../../../app/latencyCheck.ts';
import type { PlayerHearing } from '../../../app/playingTakes.ts';
import type { InputKind } from '../../../app/takeInputs.ts';
import { useParts } from '../tool/parts.ts';
import { useView } from '../tool/useProject.ts';

/** What is told of what was played, and what is wrong with the input. */
export function usePlayerHearing(): PlayerHearing {
  const { playingTakes } = useParts();
  return useSyncExternalStore(playingTakes.subscribe, playingTakes.state);
}

export function useLatencyState(): LatencyState {
  const { latencyCheck } = useParts();
  return useSyncExternalStore(latencyCheck.subscribe, latencyCheck.state);
}

/** The input that is chosen; undefined where the player is not measured. */
export function useInput(): InputKind | undefined {
  const input = useView((state) => state.hearing.input);
  return input === 'nothing' ? undefined : input;
}

/** Whether the lateness of what the player is heard with was ever measured or set. */
export function useIsLatencyMeasured(): boolean {
  return useView(
    ({ hearing: { input, latencyMs } }) => input === 'nothing' || latencyMs[input] !== undefined,
  );
}
