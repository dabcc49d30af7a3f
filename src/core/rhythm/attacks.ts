import { TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import type { BandNote } from './band.ts';

/** Notes struck as one: by start, lowest first where two start together. */
export type Attack = readonly BandNote[];

/** Notes of one chord follow each other within this: about 30 ms at 120 beats a minute. */
export const CHORD_GAP_TICKS: Ticks = TICKS_PER_QUARTER / 16;

/** A strum rolls over the strings for no longer than this: about 60 ms at 120. */
const ROLL_TICKS: Ticks = 2 * CHORD_GAP_TICKS;

/**
 * Gathers notes into attacks: a note joins when it starts within `CHORD_GAP_TICKS` of the one
 * before and within twice that of the attack's first (a strum's roll). `notes` ascend by start.
 */
export function attacksOf(notes: readonly BandNote[]): Attack[] {
  const attacks: BandNote[][] = [];
  for (const note of notes) {
    const current = attacks.at(-1);
    const first = current?.[0];
    const last = current?.at(-1);
    const joins =
      first !== undefined &&
      last !== undefined &&
      note.startTick - last.startTick <= CHORD_GAP_TICKS &&
      note.startTick - first.startTick <= ROLL_TICKS;
    if (current && joins) current.push(note);
    else attacks.push([note]);
  }
  return attacks;
}
