import type { ReadChord } from '../core/harmony/chordReadings.ts';
import { heardKeys } from '../core/harmony/heardKey.ts';
import type { ChordSlice } from './chordSlices.ts';
import type { RecordedKey } from './heardRecording.ts';

/** Shares of the twelve notes over all slices in which a chord was heard. */
function notesHeard(slices: readonly ChordSlice[], read: readonly ReadChord[]): Float64Array {
  const sums = new Float64Array(12);
  for (const { first, last, chord } of read)
    if (chord !== 'no-chord')
      for (const { chroma, durationSec } of slices.slice(first, last + 1))
        for (let i = 0; i < 12; i++) sums[i]! += durationSec * chroma[i]!;
  const all = sums.reduce((total, x) => total + x, 0);
  return sums.map((x) => (all === 0 ? 0 : x / all));
}

/** Chords must be heard for so much of what is not silent that a key is told from them. */
const LEAST_CHORDS = 0.2;

function secOf(slices: readonly ChordSlice[]): number {
  return slices.reduce((sum, { durationSec }) => sum + durationSec, 0);
}

/** The likeliest key by the notes and the chords of a recording, with how sure that is; none where hardly a chord was heard. */
export function keyOf(
  slices: readonly ChordSlice[],
  read: readonly ReadChord[],
): RecordedKey | undefined {
  const heard = read.map(({ first, last, chord }) => ({
    chord,
    durationSec: slices[last]!.toSec - slices[first]!.fromSec,
  }));
  const chordSec = heard.reduce(
    (sum, { chord, durationSec }) => sum + (chord === 'no-chord' ? 0 : durationSec),
    0,
  );
  const soundingSec = secOf(slices.filter(({ isSilent }) => !isSilent));
  if (chordSec < LEAST_CHORDS * soundingSec) return undefined;
  const [likeliest] = heardKeys(notesHeard(slices, read), heard);
  return likeliest && { ...likeliest.key, confidence: likeliest.confidence };
}
