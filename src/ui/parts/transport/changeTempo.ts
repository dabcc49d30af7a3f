import type { Parts } from '../tool/parts.ts';
import { speedChanged } from '../tool/playingSpeed.ts';

/** How far a drill's rung is nudged at a time, in beats a minute: about as little as one hears. */
export const NUDGE_BPM = 2;

const SPEED_STEP = 5;

/** A little slower or faster: a drill that plays is nudged on its rung, else the playing speed changes. */
export function changeTempo({ playback, view }: Parts, by: 1 | -1): void {
  const playing = playback.state();
  if (playing.status === 'playing' && playing.drill) playback.nudge(by * NUDGE_BPM);
  else view.set(speedChanged(view.snapshot().speedPercent, by * SPEED_STEP));
}
