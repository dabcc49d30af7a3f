import type { Timeline } from '../song/timeline.ts';
import type { Voicing } from '../voicing/voicing.ts';
import type { Note } from './note.ts';
import { sortNotes } from './noteList.ts';
import { TOUCH_VELOCITY } from './realise.ts';

/**
 * The chords of a timeline held, each struck at its change and let go at the next, without any
 * pattern; N.C. is silent. `voicings` has one entry for each of `timeline.chords`, in order.
 * Ascending by start and then by key number.
 */
export function heldNotes({ chords }: Timeline, voicings: readonly Voicing[]): Note[] {
  if (voicings.length !== chords.length)
    throw new Error(`${voicings.length} voicings for ${chords.length} chords`);
  return sortNotes(
    chords.flatMap(({ startTick, endTick }, i) =>
      voicings[i]!.map(({ hand, keyNumber }) => ({
        part: hand,
        keyNumber,
        startTick,
        durationTicks: endTick - startTick,
        velocity: TOUCH_VELOCITY[hand].plain,
      })),
    ),
  );
}
