import type { SheetEvent, SheetVoice } from '../../../core/rhythm/sheet.ts';
import type { StaffPlace } from './staffPlaces.ts';

export type StemDirection = 'up' | 'down';

/**
 * The stem of each event of a voice. `places` are those of its heads. With two voices on a staff
 * the direction is `fixed`; otherwise the head farthest from the middle line decides. Where two are
 * equally far the stem goes as the one before, a note on the middle line down. A beamed group has one
 * direction for all (common practice). Rests go up.
 */
export function stemDirections(
  voice: SheetVoice,
  places: readonly (readonly StaffPlace[])[],
  fixed?: StemDirection,
): StemDirection[] {
  if (fixed !== undefined) return voice.map(() => fixed);
  let before: StemDirection | undefined;
  return beamedRuns(voice).flatMap((run) => {
    const heads = run.flatMap((i) => places[i]!);
    if (heads.length === 0) return run.map(() => 'up' as const);
    const direction = directionOf(heads, before);
    before = direction;
    return run.map(() => direction);
  });
}

function directionOf(
  places: readonly StaffPlace[],
  before: StemDirection | undefined,
): StemDirection {
  const [highest, lowest] = [Math.max(...places), Math.min(...places)];
  if (highest === -lowest && highest !== 0) return before ?? 'down';
  return highest >= -lowest ? 'down' : 'up';
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
