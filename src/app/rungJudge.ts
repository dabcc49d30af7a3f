import type { InputSees } from '../core/practice/expectedHits.ts';
import { scoreTake } from '../core/practice/takeScore.ts';
import type { RungScore } from '../core/practice/tempoLadder.ts';
import type { Seconds } from '../core/time/ticks.ts';
import type { Store } from '../state/store.ts';
import { isAtGoalBetween, isSameRung } from './drillCourse.ts';
import type { SoundingPass } from './soundingPass.ts';
import type { TakeLog } from './takeLog.ts';
import { matchingBetween, matchStretches } from './takeMatching.ts';

/**
 * A hit is judged missed, and a rung judged, only so long after: later than that nothing comes in
 * that was played in time, as a microphone tells its onsets 80 ms late.
 */
export const JUDGED_AFTER_SEC: Seconds = 0.3;

/** Who listens to a player: what was asked and came in, what the input can tell, and the time that is heard now. */
export type JudgedListening = {
  readonly log: TakeLog;
  readonly sees: InputSees;
  readonly heardNow: () => Seconds;
};

/** What the judge of rungs knows of the rung it judged last. */
type Judged = {
  readonly pass: SoundingPass;
  readonly uncleanInARow: number;
};

/**
 * Tells how what was asked of the player since the last rung was played, as far as it is heard by
 * now. Passes at the goal's tempo between those of a slower rung do not count. Undefined where
 * nothing was played: nobody tried.
 */
export function rungJudge(
  { log, sees, heardNow }: JudgedListening,
  store: Pick<Store, 'snapshot'>,
): () => RungScore | undefined {
  let judgedSec = Number.NEGATIVE_INFINITY;
  let before: Judged | undefined;
  return () => {
    const fromSec = judgedSec;
    judgedSec = heardNow() - JUDGED_AFTER_SEC;
    const near = log.playing().filter(({ pass }) => pass.toSec > fromSec);
    const last = near.at(-1)?.pass;
    if (!last?.plan.drill) return undefined;
    const counting = near.filter(
      ({ pass: { plan } }) =>
        isSameRung(plan, last.plan) && !isAtGoalBetween(store.snapshot(), plan),
    );
    const matching = matchStretches(counting, log.notesSince(fromSec - 1), sees);
    const score = scoreTake(matchingBetween(matching, fromSec, judgedSec));
    if (score.played === 0 || score.expected === 0) return undefined;
    const isAgain =
      before !== undefined &&
      isSameRung(before.pass.plan, last.plan) &&
      before.pass.passIndex < last.passIndex;
    const unclean = (isAgain ? (before?.uncleanInARow ?? 0) : 0) + 1;
    before = { pass: last, uncleanInARow: score.clean ? 0 : unclean };
    return { clean: score.clean, uncleanInARow: before.uncleanInARow };
  };
}
