import { type DrillPlace, type DrillWish, rungsOfStage } from '../../../app/drillCourse.ts';
import { stageNow } from '../../../app/stageScore.ts';
import type { DrillRung } from '../../../core/practice/drillRungs.ts';
import type { Stage } from '../../../core/practice/stage.ts';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import { usePlayback, useProject, useView } from '../tool/useProject.ts';

/** A drill as the page shows it: where it is while it plays, else where it will begin. */
export type ShownDrill = {
  readonly stage: Stage | undefined;
  readonly rungs: readonly DrillRung[];
  /** The rung that is in use, from 0. */
  readonly here: number;
  /** The tempo that is heard, or will be. */
  readonly bpm: Bpm;
  readonly place: DrillPlace | undefined;
  /** Where it goes with its next pass, if that was chosen. */
  readonly wanted: DrillWish | undefined;
};

/** See `ShownDrill`. */
export function useDrill(): ShownDrill {
  const playing = usePlayback();
  const chosen = useView((state) => state.stage);
  const startRung = useView((state) => state.rung);
  const project = useProject((whole) => whole);
  const isDrill = playing.status === 'playing' && playing.drill !== undefined;
  const place = isDrill ? playing.drill : undefined;
  const stage = place ? place.stage : stageNow(project, chosen);
  const rungs = rungsOfStage(project, stage);
  const here = Math.min(place ? place.rung - 1 : startRung, rungs.length - 1);
  return {
    stage,
    rungs,
    here,
    bpm: isDrill ? playing.bpm : rungs[here]!.bpm,
    place,
    wanted: isDrill ? playing.wanted : undefined,
  };
}
