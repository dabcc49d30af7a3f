import { twoFives } from '../../../core/harmony/twoFives.ts';
import type { ChordSlot } from '../../../core/song/song.ts';

/** What of a ii–V bracket stands under a chord: its beginning, its end, or its line alone. */
export type TwoFiveMark = 'begins' | 'goes-on' | 'ends';

/** The brackets of the ii–Vs among a section's chords, by slot; undefined where none is. */
export function twoFiveMarks(
  slots: readonly Pick<ChordSlot, 'chord'>[],
): ReadonlyArray<TwoFiveMark | undefined> {
  const marks: (TwoFiveMark | undefined)[] = slots.map(() => undefined);
  for (const { second, dominant } of twoFives(slots.map((slot) => slot.chord))) {
    marks.fill('goes-on', second, dominant);
    marks[second] = 'begins';
    marks[dominant] = 'ends';
  }
  return marks;
}
