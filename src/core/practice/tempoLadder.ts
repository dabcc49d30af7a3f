import type { Bpm } from '../time/tempoMap.ts';

/** A step between rungs: so many beats a minute, or so many per cent of the rung before. */
export type LadderStep =
  | { readonly kind: 'bpm'; readonly bpm: number }
  | { readonly kind: 'percent'; readonly percent: number };

/** A rising series of tempos, each held for `passesPerRung` passes. Tempos count the felt beat. */
export type TempoLadder = {
  readonly startBpm: Bpm;
  readonly goalBpm: Bpm;
  readonly step: LadderStep;
  readonly passesPerRung: number;
  readonly climb: 'always' | 'when-clean';
};
