import type { Ticks } from '../time/ticks.ts';
import type { Band, BandTrack, TrackRole } from './band.ts';
import { drumPartOf } from './drumVoices.ts';
import type { Note, Part } from './note.ts';
import type { BandBars } from './strokes.ts';

/** Who sounds a track's notes as they are: a part of the band, or the piano for what none of them is. */
function partOf(role: TrackRole, keyNumber: number): Part {
  if (role === 'drums') return drumPartOf(keyNumber);
  return role === 'accompaniment' || role === 'other' ? 'right' : role;
}

/**
 * What a track plays in a range of bars, as it stands in the file, from tick 0 at the first bar on; each note in
 * the sound of the track's role. Notes that begin before the range are left out.
 */
export function trackNotes(
  { bars, lengthTicks }: Pick<Band, 'bars' | 'lengthTicks'>,
  { notes }: Pick<BandTrack, 'notes'>,
  role: TrackRole,
  { firstBar, lastBar }: BandBars,
): Note[] {
  const from: Ticks = bars[firstBar]?.startTick ?? 0;
  const to: Ticks = bars[lastBar + 1]?.startTick ?? lengthTicks;
  return notes
    .filter(({ startTick }) => startTick >= from && startTick < to)
    .map(({ startTick, durationTicks, keyNumber, velocity }) => ({
      part: partOf(role, keyNumber),
      keyNumber,
      startTick: startTick - from,
      durationTicks,
      velocity,
    }));
}
