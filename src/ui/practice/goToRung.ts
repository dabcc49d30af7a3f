import { rungsOf } from '../../core/practice/tempoLadder.ts';
import type { Parts } from '../parts.ts';

/** Takes a drill that plays to a rung (counted from 0) at its next pass; at rest it will begin there. Brought onto the ladder. */
export function goToRung({ store, playback, view }: Parts, rung: number): void {
  const playing = playback.state();
  if (playing.status === 'playing' && playing.drill) return playback.goToRung(rung);
  const last = rungsOf(store.snapshot().practice.drill.ladder).length - 1;
  view.set({ rung: Math.min(Math.max(rung, 0), last) });
}

/** The same by a number of rungs, from the one that is wanted next or else in use. */
export function goToRungBeside(parts: Parts, by: number): void {
  const playing = parts.playback.state();
  if (playing.status === 'playing' && playing.drill) return parts.playback.changeRung(by);
  const last = rungsOf(parts.store.snapshot().practice.drill.ladder).length - 1;
  goToRung(parts, Math.min(parts.view.snapshot().rung, last) + by);
}
