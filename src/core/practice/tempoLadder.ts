import { unreachable } from '../result.ts';
import type { Level } from '../rhythm/levels.ts';
import { BPM_RANGE, type Bpm } from '../time/tempoMap.ts';
import { markAbove } from './tempoMarks.ts';

/** A step between rungs: so many beats a minute, so many per cent of the rung before, or one metronome mark. */
export type LadderStep =
  | { readonly kind: 'bpm'; readonly bpm: number }
  | { readonly kind: 'percent'; readonly percent: number }
  | { readonly kind: 'marks' };

/** How far apart rungs can be, in bpm or per cent; at the most the whole range of tempos. */
export const LADDER_STEPS = { lowest: 1, highest: BPM_RANGE.highest } as const;

/** Orders in which levels and tempos climb together. */
export const CLIMB_ORDERS = [
  'levels-first',
  'levels-at-each-tempo',
  'tempos-at-each-level',
] as const;

/**
 * The levels that a ladder climbs: from `from` up to that of what is drilled. First at its slowest
 * tempo and then faster with the last of them, all of them at each tempo, or all tempos at each.
 */
export type LevelClimb = { readonly from: Level; readonly order: (typeof CLIMB_ORDERS)[number] };

/**
 * A rising series of tempos, each held for `passesPerRung` passes. Tempos count the felt beat.
 * `fallBackAfter`: so many rungs in a row that were not clean lead one rung down. `order`: passes
 * at the rung's tempo only, or each followed by one at the goal's; rising if left out. `levels`: what
 * climbs beside the tempo (see `drillRungs`); the tempo alone if left out.
 */
export type TempoLadder = {
  readonly startBpm: Bpm;
  readonly goalBpm: Bpm;
  readonly step: LadderStep;
  readonly passesPerRung: number;
  readonly climb: 'always' | 'when-clean' | 'by-hand';
  readonly fallBackAfter?: number;
  readonly order?: 'rising' | 'alternating';
  readonly levels?: LevelClimb;
};

/**
 * How a rung was played, as far as the ladder cares; the score of a take says so. `uncleanInARow`
 * counts the times, this one included, that the rung was not clean since it last changed; 1 if left out.
 */
export type RungScore = { readonly clean: boolean; readonly uncleanInARow?: number };

function tempoAfter(start: Bpm, rung: Bpm, index: number, step: LadderStep): Bpm {
  switch (step.kind) {
    case 'bpm':
      return atLeastAbove(rung, start + index * step.bpm);
    case 'percent':
      return atLeastAbove(rung, rung * (1 + step.percent / 100));
    case 'marks':
      return markAbove(rung);
    default:
      return unreachable(step);
  }
}

function atLeastAbove(rung: Bpm, bpm: Bpm): Bpm {
  return Math.max(Math.round(bpm), Math.floor(rung) + 1);
}

/**
 * The tempos of the ladder in felt beats a minute, rising: the first is `startBpm`, the last exactly
 * `goalBpm`, none lies beyond. Steps in bpm count from the start, steps in per cent from the rung
 * before; the rungs between are rounded to whole bpm, as a metronome is set, and each is at least
 * 1 bpm above the one before, however small the step. Along marks the rungs between are the marks. A start at or above the goal leaves one rung,
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
 * stays otherwise, also when nothing was scored; `by-hand` stays. The top rung is not left upwards.
 * A rung that was not clean `fallBackAfter` times in a row leads one down instead, if not by hand.
 */
export function nextRung(ladder: TempoLadder, rung: number, score: RungScore | undefined): number {
  return rungAfter(ladder, rungsOf(ladder).length, rung, score);
}

/** `nextRung` where the ladder has `count` rungs (at least 1), whatever stands on them. */
export function rungAfter(
  ladder: TempoLadder,
  count: number,
  rung: number,
  score: RungScore | undefined,
): number {
  const top = count - 1;
  const held = Math.min(rung, top);
  if (ladder.climb === 'by-hand') return held;
  if (fallsBack(ladder, score)) return Math.max(held - 1, 0);
  const climbs = ladder.climb === 'always' || score?.clean === true;
  return climbs ? Math.min(held + 1, top) : held;
}

function fallsBack({ fallBackAfter }: TempoLadder, score: RungScore | undefined): boolean {
  if (fallBackAfter === undefined || !score || score.clean) return false;
  return (score.uncleanInARow ?? 1) >= fallBackAfter;
}
