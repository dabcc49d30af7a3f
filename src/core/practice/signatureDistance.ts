import { chordTones } from '../harmony/chord.ts';
import { chromaOf } from '../harmony/pitch.ts';
import type { ChordSpan } from '../song/timeline.ts';

/** Signatures from F♯/G♭ on, as many as there are different scales. */
const SIGNATURES = [-6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5] as const;

/**
 * How far apart on the circle of fifths (0 to 6) the scales of two stretches of chords lie: the least
 * distance between the signatures that hold most of the one's notes (each as long as its chord) and
 * those that hold most of the other's. 0 where one signature fits both, or where one has no chords.
 */
export function signatureDistance(one: readonly ChordSpan[], other: readonly ChordSpan[]): number {
  const [from, to] = [fittingSignatures(one), fittingSignatures(other)];
  const distances = from.flatMap((a) => to.map((b) => Math.min(mod12(a - b), mod12(b - a))));
  return distances.length === 0 ? 0 : Math.min(...distances);
}

function mod12(n: number): number {
  return ((n % 12) + 12) % 12;
}

/** A note's place on the circle of fifths, C at 0: a signature holds from one below it to five above. */
function holds(signature: number, chroma: number): boolean {
  const place = mod12(7 * chroma - signature + 1);
  return place <= 6;
}

/** All signatures that hold as many of the notes as any does; none without notes. */
function fittingSignatures(chords: readonly ChordSpan[]): number[] {
  const notes = chords.flatMap(({ chord, startTick, endTick }) =>
    chord === 'no-chord'
      ? []
      : chordTones(chord).map(({ pitchClass }) => ({
          chroma: chromaOf(pitchClass),
          ticks: endTick - startTick,
        })),
  );
  if (notes.length === 0) return [];
  const held = SIGNATURES.map((signature) =>
    notes.reduce((sum, { chroma, ticks }) => sum + (holds(signature, chroma) ? ticks : 0), 0),
  );
  const most = Math.max(...held);
  return SIGNATURES.filter((_, i) => held[i] === most);
}
