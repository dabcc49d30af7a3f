import {
  type DrillRung,
  drillRungs,
  isPassAtGoal,
  nextDrillRung,
  passBpm,
  passesOnRung,
} from '../core/practice/drillRungs.ts';
import type { Stage } from '../core/practice/stage.ts';
import type { RungScore } from '../core/practice/tempoLadder.ts';
import type { Project } from '../core/project.ts';
import { BPM_RANGE, type Bpm } from '../core/time/tempoMap.ts';
import { selectStages, selectTellingLevels } from '../state/stages.ts';
import { type DrillRequest, isOnChords, type PlayRequest } from './score.ts';
import { stageNow } from './stageScore.ts';

/**
 * Where on its way a drill's pass is: rung and pass on it, from 0. `nudgeBpm`: how much faster (slower,
 * where negative) than the rung's tempo the player wants it while that rung lasts. `wasClean`: whether
 * the rung was clean the last time it was judged.
 */
export type DrillPass = {
  readonly rung: number;
  readonly pass: number;
  readonly nudgeBpm?: number;
  readonly wasClean?: boolean;
};

/** A rung of a stage, or of the drill on one chord as it is set, to go to. */
export type DrillWish = Pick<DrillRequest, 'rung' | 'stage'>;

/** Where on its way a drill is: rung `rung` of `rungs`, pass `pass` of `passes`, counted from 1. */
export type DrillPlace = {
  readonly rung: number;
  readonly rungs: number;
  readonly pass: number;
  readonly passes: number;
  readonly stage?: Stage;
  readonly level?: DrillRung['level'];
  readonly nudgeBpm?: number;
  /** This pass is one at the goal's tempo between two of the rung. */
  readonly isAtGoal?: true;
  /** The top rung, played clean: the next stage may follow. */
  readonly isDone?: true;
};

/** Tells how the rung that ends was played, if anybody heard it; asked once, shortly before its end. */
export type RungJudge = () => RungScore | undefined;

/**
 * The rungs of a stage as it is now, or of the drill as it is set. On chords, levels that leave the same
 * of the pattern are one.
 */
export function rungsOfStage(project: Project, stage: Stage | undefined): DrillRung[] {
  const { ladder } = project.practice.drill;
  const now = stageNow(project, stage);
  const knowsPart = ladder.levels !== undefined && isOnChords({ ...(now && { stage: now }) });
  return knowsPart
    ? drillRungs(ladder, now?.level, selectTellingLevels(project))
    : drillRungs(ladder, now?.level);
}

/** A rung of a ladder by its place, from 0; its top where the ladder was made shorter. */
export function rungAt(rungs: readonly DrillRung[], place: number): DrillRung {
  const rung = rungs[Math.min(place, rungs.length - 1)];
  if (!rung) throw new Error(`a drill without rung ${place}`);
  return rung;
}

/** The tempo of a pass of a drill. */
export function drillBpm(project: Project, stage: Stage | undefined, drill: DrillPass): Bpm {
  const rung = rungAt(rungsOfStage(project, stage), drill.rung);
  return settable(passBpm(project.practice.drill.ladder, rung, drill.pass) + (drill.nudgeBpm ?? 0));
}

function settable(bpm: Bpm): Bpm {
  return Math.min(Math.max(bpm, BPM_RANGE.lowest), BPM_RANGE.highest);
}

/** What of a pass says that it is one of a drill, and of which rung. */
type InDrill = { readonly request: PlayRequest; readonly drill?: DrillPass };

function stageOf({ request }: InDrill): Stage | undefined {
  return request.kind === 'drill' ? request.stage : undefined;
}

/** Whether two passes are on one rung of one stage of a drill. */
export function isSameRung(one: InDrill, other: InDrill): boolean {
  return one.drill?.rung === other.drill?.rung && stageOf(one)?.id === stageOf(other)?.id;
}

/** Whether a pass is one at the goal's tempo between two of a drill's rung. */
export function isAtGoalBetween(project: Project, plan: InDrill): boolean {
  if (!plan.drill) return false;
  const held = rungAt(rungsOfStage(project, stageOf(plan)), plan.drill.rung);
  return isPassAtGoal(project.practice.drill.ladder, held, plan.drill.pass);
}

/** A drill's pass so much faster or slower than it is, within the tempos that can be set. */
export function nudged(
  project: Project,
  stage: Stage | undefined,
  drill: DrillPass,
  byBpm: number,
): DrillPass {
  const { nudgeBpm = 0, ...rest } = drill;
  const bpm = drillBpm(project, stage, drill);
  const next = nudgeBpm + settable(bpm + byBpm) - bpm;
  return next === 0 ? rest : { ...rest, nudgeBpm: next };
}

/**
 * What follows a pass of a drill: a wish, or the next pass of its rung, or what the ladder says
 * (`nextDrillRung`) once `judge` was asked after the rung's last pass; a rung that was not clean is held
 * from its first pass on again. A nudge lasts as long as its rung. Stages are left only by a wish.
 */
export function drillAfter(
  { stage, drill }: { readonly stage: Stage | undefined; readonly drill: DrillPass },
  project: Project,
  wish: DrillWish | undefined,
  judge?: RungJudge,
): { readonly stage: Stage | undefined; readonly drill: DrillPass; readonly isNew: boolean } {
  if (wish) {
    const top = rungsOfStage(project, wish.stage).length - 1;
    const drillThere = { rung: Math.min(wish.rung, top), pass: 0 };
    return { stage: wish.stage, drill: drillThere, isNew: true };
  }
  const { ladder } = project.practice.drill;
  const rungs = rungsOfStage(project, stage);
  const held = Math.min(drill.rung, rungs.length - 1);
  if (drill.pass + 1 < passesOnRung(ladder, rungAt(rungs, held)))
    return { stage, drill: { ...drill, rung: held, pass: drill.pass + 1 }, isNew: false };
  const score = judge?.();
  const rung = nextDrillRung(rungs, ladder, held, score);
  if (rung !== held) return { stage, drill: { rung, pass: 0 }, isNew: true };
  const { wasClean: _, ...kept } = drill;
  const pass = score?.clean === false ? 0 : drill.pass + 1;
  const judged = score ? { wasClean: score.clean } : {};
  return { stage, drill: { ...kept, ...judged, rung: held, pass }, isNew: false };
}

/**
 * The rung above or below one, in its stage or, beyond its top or its first rung, in the stage that comes
 * after or before: on that one's first rung upwards, on its top downwards. Where there is no other stage,
 * and in the drill as it is set, the top and the first rung are not left.
 */
export function wishBeside(project: Project, { stage, rung }: DrillWish, by: 1 | -1): DrillWish {
  const top = rungsOfStage(project, stage).length - 1;
  const to = Math.min(rung, top) + by;
  const here = stage && { stage };
  if (to >= 0 && to <= top) return { ...here, rung: to };
  const other = stage && stageBeside(project, stage, by);
  if (!other) return { ...here, rung: by > 0 ? top : 0 };
  return { stage: other, rung: by > 0 ? 0 : rungsOfStage(project, other).length - 1 };
}

/** The stage that comes after (or before) one in the list; undefined at its ends and for a stage outside it. */
export function stageBeside(project: Project, stage: Stage, by: 1 | -1): Stage | undefined {
  const stages = selectStages(project);
  const place = stages.findIndex(({ id }) => id === stage.id);
  return place < 0 ? undefined : stages[place + by];
}

/** The place of a drill's pass on its way as that is now. */
export function drillPlaceOf(
  project: Project,
  stage: Stage | undefined,
  drill: DrillPass,
): DrillPlace {
  const rungs = rungsOfStage(project, stage);
  const rung = Math.min(drill.rung, rungs.length - 1);
  const now = stageNow(project, stage);
  const { ladder } = project.practice.drill;
  const held = rungAt(rungs, rung);
  const { level } = held;
  return {
    rung: rung + 1,
    rungs: rungs.length,
    pass: drill.pass + 1,
    passes: passesOnRung(ladder, held),
    ...(now && { stage: now }),
    ...(level !== undefined && { level }),
    ...(drill.nudgeBpm !== undefined && { nudgeBpm: drill.nudgeBpm }),
    ...(isPassAtGoal(ladder, held, drill.pass) && { isAtGoal: true }),
    ...(rung === rungs.length - 1 && drill.wasClean && { isDone: true }),
  };
}
