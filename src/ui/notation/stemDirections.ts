import type { SheetEvent, SheetVoice } from '../../core/rhythm/sheet.ts';
import type { StaffPlace } from './staffPlaces.ts';

export type StemDirection = 'up' | 'down';

/**
 * The stem of each event of a voice. `places` are those of its heads. With two voices on a staff
 * the direction is `fixed`; otherwise the head farthest from the middle line decides, down where
 * two are equally far, and a beamed group has one direction for all (common practice). Rests go up.
 */
export function stemDirections(
  voice: SheetVoice,
  places: readonly (readonly StaffPlace[])[],
  fixed?: StemDirection,
): StemDirection[] {
  if (fixed !== undefined) return voice.map(() => fixed);
  return beamedRuns(voice).flatMap((run) => {
    const direction = directionOf(run.flatMap((i) => places[i]!));
    return run.map(() => direction);
  });
}

function directionOf(places: readonly StaffPlace[]): StemDirection {
  if (places.length === 0) return 'up';
  return Math.max(...places) >= -Math.min(...places) ? 'down' : 'up';
}

/** The voice's events by index, those under one beam together, any other alone. */
export function beamedRuns(voice: readonly Pick<SheetEvent, 'beam'>[]): number[][] {
  const runs: number[][] = [];
  for (const [i, { beam }] of voice.entries()) {
    const goesOn = beam === 'continue' || beam === 'end';
    if (goesOn && runs.length > 0) runs.at(-1)!.push(i);
    else runs.push([i]);
  }
  return runs;
}

/** The voice's tuplets, each as the indices of its events from its `start` to its `stop`. */
export function tupletRuns(
  voice: readonly Pick<SheetEvent, 'tupletEdge' | 'written'>[],
): number[][] {
  const runs: number[][] = [];
  let open: number[] | undefined;
  for (const [i, { tupletEdge, written }] of voice.entries()) {
    if (tupletEdge === 'start') {
      open = [];
      runs.push(open);
    }
    if (written.tuplet) open?.push(i);
    if (tupletEdge === 'stop' || !written.tuplet) open = undefined;
  }
  return runs;
}
