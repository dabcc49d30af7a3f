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

/** How a rung was played, as far as the ladder cares; the score of a take says so. */
export type RungScore = { readonly clean: boolean };

function tempoAfter(start: Bpm, rung: Bpm, index: number, step: LadderStep): Bpm {
  const next = step.kind === 'bpm' ? start + index * step.bpm : rung * (1 + step.percent / 100);
  return Math.max(Math.round(next), Math.floor(rung) + 1);
}

/**
 * The tempos of the ladder in felt beats a minute, rising: the first is `startBpm`, the last exactly
 * `goalBpm`, none lies beyond. Steps in bpm count from the start, steps in per cent from the rung
 * before; the rungs between are rounded to whole bpm, as a metronome is set, and each is at least
 * 1 bpm above the one before, however small the step. A start at or above the goal leaves one rung,
 * the goal. Start and goal must be positive.
 */
export function rungsOf(ladder: TempoLadder): Bpm[] {
  const { startBpm, goalBpm, step } = ladder;
  if (!(startBpm > 0 && goalBpm > 0 && Number.isFinite(goalBpm)))
    throw new Error(`a ladder cannot climb from ${startBpm} to ${goalBpm} bpm`);
  const rungs: Bpm[] = [];
  let rung = startBpm;
  while (rung < goalBpm) {
    rungs.push(rung);
    rung = tempoAfter(startBpm, rung, rungs.length, step);
  }
  return [...rungs, goalBpm];
}

/**
 * The rung (0-based, an index of `rungsOf`) to play after the passes of rung `rung`. A ladder that
 * climbs `always` goes one up; one that climbs `when-clean` does so only after a clean score and
 * stays otherwise, also when nothing was scored. The top rung is never left.
 */
export function nextRung(ladder: TempoLadder, rung: number, score: RungScore | undefined): number {
  const climbs = ladder.climb === 'always' || score?.clean === true;
  const top = rungsOf(ladder).length - 1;
  return climbs ? Math.min(rung + 1, top) : Math.min(rung, top);
}
