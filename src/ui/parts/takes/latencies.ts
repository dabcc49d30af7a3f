import type { HeardWith } from '../../../app/playingTakes.ts';
import type { InputKind } from '../../../app/takeInputs.ts';
import { LATENCY_RANGE_MS, type ViewState } from '../tool/viewState.ts';

/** The view with the latency of an input, in milliseconds, brought to whole ones within the range. */
export function withLatency(
  { hearing }: Pick<ViewState, 'hearing'>,
  kind: InputKind,
  ms: number,
): Pick<ViewState, 'hearing'> {
  const { lowest, highest } = LATENCY_RANGE_MS;
  const latency = Math.min(highest, Math.max(lowest, Math.round(ms)));
  return { hearing: { ...hearing, latencyMs: { ...hearing.latencyMs, [kind]: latency } } };
}

/** What the player is heard with by the view; undefined where that is nothing. */
export function heardWith({ hearing }: Pick<ViewState, 'hearing'>): HeardWith | undefined {
  const { input, latencyMs } = hearing;
  if (input === 'nothing') return undefined;
  return { kind: input, latencySec: (latencyMs[input] ?? 0) / 1000 };
}
