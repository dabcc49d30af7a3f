import { type DrillWish, rungsOfStage, wishBeside } from '../../app/drillCourse.ts';
import type { Stage } from '../../core/practice/stage.ts';
import type { Parts } from '../parts/tool/parts.ts';

/** Where a drill begins that does not play: the stage and the rung (from 0) that are chosen on this device. */
export function drillAtRest({ view }: Pick<Parts, 'view'>): DrillWish {
  const { rung, stage } = view.snapshot();
  return { rung, ...(stage && { stage }) };
}

/**
 * Takes a drill that plays to a rung (from 0) of a stage, or of the drill as it is set, at its next pass;
 * at rest it will begin there. Brought onto the ladder.
 */
export function goToRung({ store, playback, view }: Parts, { rung, stage }: DrillWish): void {
  const playing = playback.state();
  if (playing.status === 'playing' && playing.drill)
    return playback.goToRung({ rung, ...(stage && { stage }) });
  const top = rungsOfStage(store.snapshot(), stage).length - 1;
  view.set({ rung: Math.min(Math.max(rung, 0), top), stage });
}

/** Takes the drill to the first rung of a stage, or of the drill as it is set. */
export function goToStage(parts: Parts, stage: Stage | undefined): void {
  goToRung(parts, { rung: 0, ...(stage && { stage }) });
}

/** Goes a rung up or down, beyond the ladder's ends a stage on or back, from what is wanted next or else in use. */
export function goToRungBeside(parts: Parts, by: 1 | -1): void {
  const playing = parts.playback.state();
  if (playing.status === 'playing' && playing.drill) return parts.playback.changeRung(by);
  goToRung(parts, wishBeside(parts.store.snapshot(), drillAtRest(parts), by));
}

/**
 * Keeps the chosen stage the one that is drilled, so that after stopping one is where one stopped; from
 * now on until the function that it gives is called.
 */
export function keepStageInView({ playback, view }: Pick<Parts, 'playback' | 'view'>): () => void {
  return playback.subscribe(() => {
    const playing = playback.state();
    if (playing.status !== 'playing' || !playing.drill) return;
    const { stage } = playing.drill;
    if (stage?.id !== view.snapshot().stage?.id) view.set({ stage, rung: 0 });
  });
}
