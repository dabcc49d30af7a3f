import { endOf, type Span } from '../audio/pass.ts';
import type { Seconds } from '../core/time/ticks.ts';
import type { CoursePass } from './course.ts';
import type { Score, TimedScore } from './score.ts';

/**
 * A stretch of what plays: the music `score`, whose `fromTick` stands at `originSec`, sounds from
 * `fromSec` to before `toSec`; all are times of the audio clock. Stretches with one `passIndex`
 * (from 0 since the command to play) are one pass that was edited while it sounded.
 */
export type SoundingPass = {
  readonly passIndex: number;
  readonly plan: CoursePass;
  readonly score: Score;
  readonly originSec: Seconds;
  readonly fromSec: Seconds;
  readonly toSec: Seconds;
};

/** The stretches that a player's spans are, in order of time. */
export function soundingPasses(
  spans: readonly Span<TimedScore & { readonly plan: CoursePass; readonly score: Score }>[],
): SoundingPass[] {
  return spans.map((span, i) => ({
    passIndex: span.passIndex,
    plan: span.pass.plan,
    score: span.pass.score,
    originSec: span.originSec,
    fromSec: span.fromSec,
    toSec: spans[i + 1]?.fromSec ?? endOf(span),
  }));
}
