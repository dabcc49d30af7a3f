import type { ClickSettings } from '../core/practice/practiceSettings.ts';
import { restsLeft, withClickRests } from '../core/rhythm/clickRests.ts';
import { barAt, type TimelineBar } from '../core/song/timeline.ts';
import type { CoursePass } from './course.ts';
import type { Score } from './score.ts';

/** The bars that a score plays. */
function playedBars({ timeline, fromTick, toTick }: Score): TimelineBar[] {
  return timeline.bars.filter(({ startTick }) => startTick >= fromTick && startTick < toTick);
}

/** A score whose click falls silent as the settings will have it; `barsBefore` were played before it. */
export function restedScore(
  score: Score,
  { rests }: Pick<ClickSettings, 'rests'>,
  barsBefore = 0,
): Score {
  if (!rests) return score;
  const notes = withClickRests(score.notes, playedBars(score), rests, barsBefore);
  return { ...score, notes };
}

/** The click rests where one practises, in a song and a drill, not where a pattern is written. */
function isPractised({ request }: CoursePass): boolean {
  return request.kind === 'song' || request.kind === 'drill';
}

/** A pass's music with the rests of its click, which go on from pass to pass. */
export function restedPass(plan: CoursePass, score: Score, click: ClickSettings): Score {
  return isPractised(plan) ? restedScore(score, click, plan.barsBefore) : score;
}

/** The pass that follows another one, its bars counted on; a new count-in begins the count anew. */
export function passCountedOn(
  next: CoursePass | undefined,
  last: { readonly plan: CoursePass; readonly score: Score },
): CoursePass | undefined {
  if (!next || next.countInBars > 0) return next;
  const barsBefore = (last.plan.barsBefore ?? 0) + playedBars(last.score).length;
  return { ...next, barsBefore };
}

/** How many bars the click still rests at a tick of a pass, its bar included; 0 where it sounds or is off. */
export function clickRestsFor(
  { plan, score }: { readonly plan: CoursePass; readonly score: Score },
  tick: number,
  { on, rests }: ClickSettings,
): number {
  if (!on || !rests || !isPractised(plan) || tick < score.fromTick) return 0;
  const bar = barAt(score.timeline, tick);
  if (!bar) return 0;
  return restsLeft(rests, (plan.barsBefore ?? 0) + playedBars(score).indexOf(bar));
}
