import { unreachable } from '../result.ts';
import type { Level } from '../rhythm/levels.ts';
import type { Hands, Pattern } from '../rhythm/pattern.ts';
import { thinnedPattern } from '../rhythm/thinnedPattern.ts';
import { tempoBeatTicks } from '../time/meter.ts';
import type { Bpm, Tempo } from '../time/tempoMap.ts';
import { type RungScore, rungAfter, rungsOf, type TempoLadder } from './tempoLadder.ts';

/** One rung of a drill: a tempo, and the level of the part; all of it without. */
export type DrillRung = { readonly bpm: Bpm; readonly level?: Level };

/** The highest level below the whole part. */
const LAST_BEFORE_ALL: Level = 4;

/** All levels, upwards. */
export const LEVELS_UPWARDS: readonly Level[] = [1, 2, 3, 4, 5];

/** Those of some levels from one up to another, which is always there; up to the whole part where there is no other. */
function levelsUpTo(
  from: Level,
  to: Level | undefined,
  telling: readonly Level[],
): DrillRung['level'][] {
  const last = to ?? LAST_BEFORE_ALL;
  const below = telling.filter((level) => level >= from && level <= last && level !== to);
  return [...below, to];
}

function rung(bpm: Bpm, level: Level | undefined): DrillRung {
  return level === undefined ? { bpm } : { bpm, level };
}

/**
 * The rungs of a drill in the order in which they are climbed, at least one. The tempos are
 * `rungsOf(ladder)`. Where the ladder climbs levels as well, they rise from its lowest to `level`
 * (the level of what is drilled; all of the part without), in the order that it names; where that
 * lies below the lowest, nothing but the tempo climbs. `telling` are the levels that differ in the part
 * (`tellingLevels`), upwards; the others are passed over.
 */
export function drillRungs(
  ladder: TempoLadder,
  level: Level | undefined,
  telling: readonly Level[] = LEVELS_UPWARDS,
): DrillRung[] {
  const tempos = rungsOf(ladder);
  const { levels } = ladder;
  if (!levels || (level !== undefined && level < levels.from))
    return tempos.map((bpm) => rung(bpm, level));
  const parts = levelsUpTo(levels.from, level, telling);
  switch (levels.order) {
    case 'levels-first':
      return [
        ...parts.map((part) => rung(tempos[0]!, part)),
        ...tempos.slice(1).map((bpm) => rung(bpm, level)),
      ];
    case 'levels-at-each-tempo':
      return tempos.flatMap((bpm) => parts.map((part) => rung(bpm, part)));
    case 'tempos-at-each-level':
      return parts.flatMap((part) => tempos.map((bpm) => rung(bpm, part)));
    default:
      return unreachable(levels.order);
  }
}

/**
 * The levels that differ in a pattern, played at a song's tempo without its ending: each has fewer notes
 * than all that lie above it, upwards. None where the lowest level is the whole part already.
 */
export function tellingLevels(pattern: Pattern, { bpm, beatTicks }: Tempo): Level[] {
  const { ending: _, ...main } = pattern;
  const patternBpm = (bpm * beatTicks) / tempoBeatTicks(pattern.meter);
  const counts = [
    ...LEVELS_UPWARDS.map((level) => hitsIn(thinnedPattern(main, level, patternBpm))),
    hitsIn(main),
  ];
  return LEVELS_UPWARDS.filter((_level, i) => counts[i]! < counts[i + 1]!);
}

function hitsIn({ left, right }: Hands): number {
  return left.length + right.length;
}

/** The rung to play after one of them, 0-based: as `nextRung` says, over tempos and levels alike. */
export function nextDrillRung(
  rungs: readonly DrillRung[],
  ladder: TempoLadder,
  held: number,
  score: RungScore | undefined,
): number {
  return rungAfter(ladder, rungs.length, held, score);
}

/** Passes at the goal's tempo come between those of a slower rung; at the goal there is nothing to alternate with. */
function alternates({ order, goalBpm }: TempoLadder, { bpm }: DrillRung): boolean {
  return order === 'alternating' && bpm < goalBpm;
}

/** How many passes a rung holds: twice as many where each is followed by one at the goal's tempo. */
export function passesOnRung(ladder: TempoLadder, held: DrillRung): number {
  return alternates(ladder, held) ? 2 * ladder.passesPerRung : ladder.passesPerRung;
}

/** Whether a pass on a rung (from 0) is one at the goal's tempo between two of the rung's own. */
export function isPassAtGoal(ladder: TempoLadder, held: DrillRung, pass: number): boolean {
  return alternates(ladder, held) && pass % 2 === 1;
}

/** The tempo of a pass (from 0) on a rung. */
export function passBpm(ladder: TempoLadder, held: DrillRung, pass: number): Bpm {
  return isPassAtGoal(ladder, held, pass) ? ladder.goalBpm : held.bpm;
}
