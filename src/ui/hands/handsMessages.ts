import { formatChordSymbol } from '../../core/harmony/chordSymbol.ts';
import type { ChordSlot } from '../../core/song/song.ts';
import type { VoicingSettings } from '../../core/voicing/voicing.ts';
import { plainKeyName } from '../parts/keyboard/noteNames.ts';

/** Why no hands are found for a section, naming the chord and what to change. */
export function nothingPlayableSentence(
  slot: ChordSlot | undefined,
  settings: VoicingSettings,
): string {
  const name = slot && slot.chord !== 'no-chord' ? formatChordSymbol(slot.chord) : 'a chord';
  const { rightLowest, rightHighest, leftLowest, leftHighest } = settings;
  return (
    `No two hands reach ${name} as set: right hand ${plainKeyName(rightLowest)} to ${plainKeyName(rightHighest)}, ` +
    `left hand ${plainKeyName(leftLowest)} to ${plainKeyName(leftHighest)}. ` +
    'Widen a range or the span, choose another manner, or change the chord on Map.'
  );
}
