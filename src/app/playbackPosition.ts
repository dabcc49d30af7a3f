import type { Project } from '../core/project.ts';
import {
  barAt,
  type ChordSpan,
  chordAt,
  type SectionSpan,
  sectionAt,
  type Timeline,
} from '../core/song/timeline.ts';
import { barTicks, beatStarts } from '../core/time/meter.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { clickRestsFor } from './clickRest.ts';
import { type CoursePass, drillPlace } from './course.ts';
import type { DrillPlace } from './drillCourse.ts';
import { firstBar, type PlayRequest, type Score, scoreTick } from './score.ts';

/**
 * What is heard at this moment. `tick` runs on `timeline` and is negative or before the score's
 * start in a count-in; `bar` indexes the timeline's bars and `beat` counts its felt beats from 0.
 * `clickRests` is how many bars the click is still silent on purpose, this one included; 0 else.
 */
export type PlaybackPosition = {
  readonly request: PlayRequest;
  readonly timeline: Timeline;
  readonly tick: number;
  readonly countingIn: boolean;
  readonly bar?: number;
  readonly beat: number;
  readonly chord?: ChordSpan;
  readonly section?: SectionSpan;
  readonly drill?: DrillPlace;
  readonly clickRests: number;
};

/** What is heard at second `sec` of a pass, `score` its music; second 0 is its first downbeat. */
export function positionIn(
  { plan, score }: { readonly plan: CoursePass; readonly score: Score },
  sec: Seconds,
  project: Project,
): PlaybackPosition {
  const { timeline } = score;
  const tick = scoreTick(score, sec);
  const bar = barAt(timeline, tick);
  const chord = chordAt(timeline, Math.max(tick, score.fromTick));
  const section = sectionAt(timeline, Math.max(tick, score.fromTick));
  const drill = drillPlace(plan, project);
  return {
    request: plan.request,
    timeline,
    tick,
    countingIn: sec < 0,
    clickRests: clickRestsFor({ plan, score }, tick, project.practice.click),
    beat: beatAt(score, tick),
    ...(bar && sec >= 0 && { bar: timeline.bars.indexOf(bar) }),
    ...(chord && { chord }),
    ...(section && { section }),
    ...(drill && { drill }),
  };
}

/** Felt beat of its bar in which a tick lies; in a count-in the bar that is counted is like the first. */
function beatAt(score: Score, tick: number): number {
  const first = firstBar(score);
  const bar = tick < score.fromTick ? first : (barAt(score.timeline, tick) ?? first);
  const length = barTicks(bar.meter);
  const inBar = (((tick - bar.startTick) % length) + length) % length;
  return beatStarts(bar.meter).findLastIndex((start) => start <= inBar);
}
