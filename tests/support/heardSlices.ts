import { chordTones } from '../../src/core/harmony/chord.ts';
import type { HeardSlice, SliceStart } from '../../src/core/harmony/chordPresence.ts';
import { chromaOf } from '../../src/core/harmony/pitch.ts';
import { chord } from './music.ts';

/** Shares that lie on the given notes for the most part, the rest spread over all. */
function onNotes(notes: readonly number[], share: number): number[] {
  return Array.from(
    { length: 12 },
    (_, i) => (1 - share) / 12 + (notes.includes(i) ? share / notes.length : 0),
  );
}

/** Two seconds of sound on a chord by its symbol, all its notes alike; `N` is all twelve notes alike, `-` silence. */
export function slice(symbol: string, starts: SliceStart = 'bar'): HeardSlice {
  const heard = { durationSec: 2, starts, isSilent: symbol === '-' };
  if (symbol === '-' || symbol === 'N')
    return { ...heard, chroma: onNotes([], 0), bass: onNotes([], 0) };
  const named = chord(symbol);
  const notes = chordTones(named).map(({ pitchClass }) => chromaOf(pitchClass));
  return {
    ...heard,
    chroma: onNotes(notes, 0.85),
    bass: onNotes([chromaOf(named.bass ?? named.root)], 0.55),
  };
}

/** Slices of two seconds each, by their symbols: `slices('C F G7')`. */
export function slices(symbols: string): HeardSlice[] {
  return symbols.split(' ').map((symbol) => slice(symbol));
}
