import type { Project } from '../core/project.ts';
import { err, type Result } from '../core/result.ts';
import { chosenPattern } from '../core/rhythm/chosenPattern.ts';
import { type Arrangement, arrangedProject } from '../state/arrangement.ts';
import {
  type DrillPass,
  type DrillWish,
  drillAfter,
  drillBpm,
  drillPlaceOf,
  nudged,
  type RungJudge,
  rungAt,
  rungsOfStage,
} from './drillCourse.ts';
import { type Jump, passAtJump } from './jump.ts';
import { phraseScore } from './phraseScore.ts';
import {
  type BarRange,
  type DrillRequest,
  isTrial,
  oneChordScore,
  type PlayRequest,
  type Score,
  type ScoreProblem,
  type SongRequest,
  songScore,
  type Times,
  withLevel,
} from './score.ts';
import { sectionScore } from './sectionScore.ts';
import { drillScore, stageNow } from './stageScore.ts';

/**
 * One pass of what was asked for. It holds no music: its score is made from the project when the
 * pass begins and again at every edit while it sounds (`scoreOfPass`).
 */
export type CoursePass = {
  readonly request: PlayRequest;
  readonly countInBars: number;
  /** Where on its way a drill's pass is. */
  readonly drill?: DrillPass;
  /** Which time a song or its range is played, from 1; the first without it. */
  readonly time?: number;
  /** The jump that led to a song's pass: it plays from there, else from the beginning of what is played. */
  readonly after?: Jump;
  /** How many bars were played before it since the last count-in; none without it. */
  readonly barsBefore?: number;
  /** Before its bar `atBar` the song's pass ends, and it goes on elsewhere. */
  readonly jump?: { readonly to: Jump; readonly atBar: number };
};

function countInOf(project: Project): number {
  return project.practice.click.countInBars;
}

/** The pass that everything begins with; a phrase, or a pattern that is tried, is heard at once, without a count-in. */
export function firstPass(request: PlayRequest, project: Project): CoursePass {
  const atOnce = request.kind === 'phrase' || isTrial(request);
  const pass = { request, countInBars: atOnce ? 0 : countInOf(project) };
  return request.kind === 'drill' ? { ...pass, drill: { rung: request.rung, pass: 0 } } : pass;
}

/** What follows in a drill; a new rung begins with a count-in where each is to have one. */
function drillPassAfter(
  { request, drill }: { readonly request: DrillRequest; readonly drill: DrillPass },
  project: Project,
  wish: DrillWish | undefined,
  judge?: RungJudge,
): CoursePass {
  const next = drillAfter({ stage: request.stage, drill }, project, wish, judge);
  const countsIn = next.isNew && project.practice.drill.countInAt === 'every-rung';
  const { stage: _, ...rest } = request;
  return {
    request: { ...rest, ...(next.stage && { stage: next.stage }) },
    countInBars: countsIn ? countInOf(project) : 0,
    drill: next.drill,
  };
}

/**
 * The pass that follows, or undefined where the music ends: a phrase is heard once, a song so many
 * times as was asked for, or on from where a jump leads, the Rhythm page's pattern for ever, a drill
 * as `drillAfter` says until it is stopped.
 */
export function passAfter(
  before: CoursePass,
  project: Project,
  wish: DrillWish | undefined,
  judge?: RungJudge,
): CoursePass | undefined {
  const { request, drill, jump, time = 1 } = before;
  if (jump) return { ...passAtJump(before, jump.to), countInBars: 0 };
  if (request.kind === 'phrase') return undefined;
  if (request.kind === 'song')
    return time >= timesIn(request) ? undefined : { request, countInBars: 0, time: time + 1 };
  if (request.kind === 'drill' && drill)
    return drillPassAfter({ request, drill }, project, wish, judge);
  return { request, countInBars: 0 };
}

function timesIn({ times }: SongRequest): number {
  return times === 'until-stopped' ? Number.POSITIVE_INFINITY : times;
}

/** A song's pass with what is played to be played so many times in all; other passes as they are. */
export function playedTimes(pass: CoursePass, times: Times): CoursePass {
  const { request } = pass;
  return request.kind === 'song' ? { ...pass, request: { ...request, times } } : pass;
}

/** The bars of the song that a pass plays. */
function songBars({ after, jump }: CoursePass, { range }: SongRequest): Partial<BarRange> {
  return {
    ...range,
    ...(after && { firstBar: after.toBar }),
    ...(jump && { endBar: jump.atBar }),
  };
}

/** How music is played this time, as the player wants it now. Only songs are played otherwise than they are written. */
export type PlayingManner = { readonly speedPercent: number; readonly arrangement: Arrangement };

/**
 * The music of a pass, from the project as it is now; the speed does not touch a drill, whose ladder
 * has its tempos.
 */
export function scoreOfPass(
  pass: CoursePass,
  project: Project,
  { speedPercent, arrangement }: PlayingManner,
): Result<Score, ScoreProblem> {
  const { request } = pass;
  if (request.kind === 'song')
    return withLevel(
      songScore(arrangedProject(project, arrangement), songBars(pass, request), speedPercent),
      arrangement.level,
    );
  if (request.kind === 'phrase') return phraseScore(project, request, speedPercent);
  if (request.kind === 'drill')
    return scoreOfDrill(project, request.stage, pass.drill ?? { rung: request.rung, pass: 0 });
  const pattern = request.pattern ?? chosenPattern(project, request.patternId);
  if (!pattern) return err({ kind: 'nothing-to-play' });
  const bpm = ((request.bpm ?? project.song.tempo.bpm) * speedPercent) / 100;
  return request.over === undefined
    ? oneChordScore(project, pattern, pattern.bars, bpm)
    : sectionScore(project, pattern, request.over, bpm);
}

function scoreOfDrill(
  project: Project,
  stage: DrillRequest['stage'],
  drill: DrillPass,
): Result<Score, ScoreProblem> {
  const now = stageNow(project, stage);
  const held = rungAt(rungsOfStage(project, now), drill.rung);
  return withLevel(drillScore(project, now, held, drillBpm(project, now, drill)), held.level);
}

/** A drill's pass so much faster or slower than it is; other passes as they are. */
export function nudgedPass(pass: CoursePass, project: Project, byBpm: number): CoursePass {
  const { request, drill } = pass;
  return request.kind === 'drill' && drill
    ? { ...pass, drill: nudged(project, request.stage, drill, byBpm) }
    : pass;
}

/** The place of a drill's pass on its way as that is now; undefined for other music. */
export function drillPlace({ request, drill }: CoursePass, project: Project) {
  return request.kind === 'drill' && drill
    ? drillPlaceOf(project, request.stage, drill)
    : undefined;
}
