import {
  nextRung,
  passBpm,
  passesOnRung,
  type RungScore,
  rungsOf,
} from '../core/practice/tempoLadder.ts';
import type { Project } from '../core/project.ts';
import { err, type Result } from '../core/result.ts';
import type { Bpm } from '../core/time/tempoMap.ts';
import { type Arrangement, arrangedProject } from '../state/arrangement.ts';
import { type Jump, passAtJump } from './jump.ts';
import { phraseScore } from './phraseScore.ts';
import {
  type BarRange,
  chosenPattern,
  drillPattern,
  isTrial,
  oneChordScore,
  type PlayRequest,
  type Score,
  type ScoreProblem,
  type SongRequest,
  songScore,
  type Times,
} from './score.ts';

/** Where on its tempo ladder a drill is: rung `rung` of `rungs`, pass `pass` of `passes`, counted from 1. */
export type DrillPlace = {
  readonly rung: number;
  readonly rungs: number;
  readonly pass: number;
  readonly passes: number;
};

/**
 * One pass of what was asked for. It holds no music: its score is made from the project when the
 * pass begins and again at every edit while it sounds (`scoreOfPass`).
 */
export type CoursePass = {
  readonly request: PlayRequest;
  readonly countInBars: number;
  /** Rung (0-based) and pass on it, of a drill. */
  readonly drill?: { readonly rung: number; readonly pass: number };
  /** Which time a song or its range is played, from 1; the first without it. */
  readonly time?: number;
  /** The jump that led to a song's pass: it plays from there, else from the beginning of what is played. */
  readonly after?: Jump;
  /** How many bars were played before it since the last count-in; none without it. */
  readonly barsBefore?: number;
  /** Before its bar `atBar` the song's pass ends, and it goes on elsewhere. */
  readonly jump?: { readonly to: Jump; readonly atBar: number };
};

/** Tells how the rung that ends was played, if anybody heard it; asked once, shortly before its end. */
export type RungJudge = () => RungScore | undefined;

function countInOf(project: Project): number {
  return project.practice.click.countInBars;
}

/** The pass that everything begins with; a phrase, or a pattern that is tried, is heard at once, without a count-in. */
export function firstPass(request: PlayRequest, project: Project): CoursePass {
  const atOnce = request.kind === 'phrase' || isTrial(request);
  const pass = { request, countInBars: atOnce ? 0 : countInOf(project) };
  return request.kind === 'drill' ? { ...pass, drill: { rung: request.rung, pass: 0 } } : pass;
}

function passOnRung(before: CoursePass, rung: number, pass: number, project: Project): CoursePass {
  const countsIn = pass === 0 && project.practice.drill.countInAt === 'every-rung';
  return {
    request: before.request,
    countInBars: countsIn ? countInOf(project) : 0,
    drill: { rung, pass },
  };
}

/**
 * The pass that follows, or undefined where the music ends: a phrase is heard once, a song so many
 * times as was asked for, or on from where a jump leads, the Rhythm page's pattern for ever, a drill
 * along its ladder (`nextRung`) until it is stopped; after a rung's last pass `judge` is asked how it
 * was played, and a rung that was not clean is held from its first pass on again. A drill goes to
 * `wantedRung` (0-based) instead where one is wanted.
 */
export function passAfter(
  before: CoursePass,
  project: Project,
  wantedRung: number | undefined,
  judge?: RungJudge,
): CoursePass | undefined {
  const { request, drill, jump, time = 1 } = before;
  if (jump) return { ...passAtJump(before, jump.to), countInBars: 0 };
  if (request.kind === 'phrase') return undefined;
  if (request.kind === 'song')
    return time >= timesIn(request) ? undefined : { request, countInBars: 0, time: time + 1 };
  if (!drill) return { request, countInBars: 0 };
  const { ladder } = project.practice.drill;
  const top = rungsOf(ladder).length - 1;
  const held = Math.min(drill.rung, top);
  if (wantedRung !== undefined) return passOnRung(before, Math.min(wantedRung, top), 0, project);
  if (drill.pass + 1 < passesOnRung(ladder, held))
    return passOnRung(before, held, drill.pass + 1, project);
  const score = judge?.();
  const rung = nextRung(ladder, held, score);
  if (rung !== held) return passOnRung(before, rung, 0, project);
  const pass = score?.clean === false ? 0 : drill.pass + 1;
  return { ...passOnRung(before, held, pass, project), countInBars: 0 };
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
export type Manner = { readonly speedPercent: number; readonly arrangement: Arrangement };

/**
 * The music of a pass, from the project as it is now; the speed does not touch a drill, whose ladder
 * has its tempos.
 */
export function scoreOfPass(
  pass: CoursePass,
  project: Project,
  { speedPercent, arrangement }: Manner,
): Result<Score, ScoreProblem> {
  const { request } = pass;
  if (request.kind === 'song')
    return songScore(arrangedProject(project, arrangement), songBars(pass, request), speedPercent);
  if (request.kind === 'phrase') return phraseScore(project, request, speedPercent);
  const pattern =
    request.kind === 'drill'
      ? drillPattern(project)
      : (request.pattern ?? chosenPattern(project, request.patternId));
  if (!pattern) return err({ kind: 'nothing-to-play' });
  const bars = request.kind === 'drill' ? project.practice.drill.barsPerPass : pattern.bars;
  const ownBpm = request.kind === 'pattern' ? request.bpm : undefined;
  const bpm = pass.drill
    ? drillBpm(project, pass.drill)
    : ((ownBpm ?? project.song.tempo.bpm) * speedPercent) / 100;
  return oneChordScore(project, pattern, bars, bpm);
}

function drillBpm({ practice }: Project, { rung, pass }: NonNullable<CoursePass['drill']>): Bpm {
  return passBpm(practice.drill.ladder, rung, pass);
}

/** The place of a drill's pass on the ladder as it is now; undefined for other music. */
export function drillPlace(pass: CoursePass, project: Project): DrillPlace | undefined {
  if (!pass.drill) return undefined;
  const { ladder } = project.practice.drill;
  const rungs = rungsOf(ladder).length;
  return {
    rung: Math.min(pass.drill.rung + 1, rungs),
    rungs,
    pass: pass.drill.pass + 1,
    passes: passesOnRung(ladder, pass.drill.rung),
  };
}
