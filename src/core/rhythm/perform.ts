import { secondsAt, type TempoMap } from '../time/tempoMap.ts';
import type { Note, TimedNote } from './note.ts';

/**
 * The notes in seconds from the downbeat of bar 1, in the order given. Both ends of a note are taken
 * from the tempo map, so a note over a change of tempo lasts as long as it should. Notes before
 * tick 0 (a count-in) have negative times.
 */
export function perform(notes: readonly Note[], tempoMap: TempoMap): TimedNote[] {
  return notes.map(({ startTick, durationTicks, ...note }) => {
    const startSec = secondsAt(tempoMap, startTick);
    return {
      ...note,
      startSec,
      durationSec: secondsAt(tempoMap, startTick + durationTicks) - startSec,
    };
  });
}
