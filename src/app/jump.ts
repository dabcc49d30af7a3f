import type { Seconds } from '../core/time/ticks.ts';
import type { CoursePass } from './course.ts';
import { type BarRange, type Score, scoreTick } from './score.ts';

/** Another place of the song to go on from: its bar `toBar`, and the bars that are played from then on (the whole song without). */
export type Jump = { readonly toBar: number; readonly range?: BarRange };

/** The song's pass as it is once a jump has happened: from there on, the same time as before unless other bars are played now. */
export function passAtJump({ request, countInBars, time }: CoursePass, jump: Jump): CoursePass {
  if (request.kind !== 'song') throw new Error(`a ${request.kind} has no other place to go to`);
  const { range } = jump;
  const { times, range: before } = request;
  const isSame = before?.firstBar === range?.firstBar && before?.endBar === range?.endBar;
  return {
    request: { kind: 'song', times, ...(range && { range }) },
    countInBars,
    after: jump,
    ...(isSame && time !== undefined && { time }),
  };
}

/**
 * A song's pass, `score` its music, that goes elsewhere: it ends at the first bar line that still can
 * be changed, as everything due before `fixedSec` of the pass stays as it is. Where not even its first
 * bar has begun by then, it keeps its count-in and begins at the other place itself.
 */
export function passWithJump(
  pass: CoursePass,
  score: Score,
  jump: Jump,
  fixedSec: Seconds,
): CoursePass {
  if (fixedSec <= 0) return passAtJump(pass, jump);
  const { bars } = score.timeline;
  const fixedTick = Math.min(scoreTick(score, fixedSec), score.toTick);
  const line = bars.findIndex((bar) => bar.startTick >= fixedTick);
  return { ...pass, jump: { to: jump, atBar: line < 0 ? bars.length : line } };
}
