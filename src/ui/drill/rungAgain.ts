import type { Parts } from '../parts/tool/parts.ts';

/** Takes a drill that plays back to the first pass of the rung it is on, once this pass is over. */
export function rungAgain({ playback }: Parts): void {
  const playing = playback.state();
  if (playing.status !== 'playing' || !playing.drill) return;
  const { rung, stage } = playing.drill;
  playback.goToRung({ rung: rung - 1, ...(stage && { stage }) });
}
