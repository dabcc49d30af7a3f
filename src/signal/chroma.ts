import type { Seconds } from '../core/time/ticks.ts';
import { NOTE_COUNT, NOTE_RANGE, noteSalience } from './noteSalience.ts';
import { BINS_A_SEMITONE, PITCH_BINS, type PitchSpectrum } from './pitchSpectrum.ts';

/** How much of each of the twelve notes of the octave sounds, from C up; values ≥ 0, no unit. */
export type Chroma = Float32Array;

/** What a slice of a recording has of each note: in the register of chords, and in that of the bass. */
export type ChromaSpan = {
  readonly fromSec: Seconds;
  readonly toSec: Seconds;
  readonly chroma: Chroma;
  readonly bass: Chroma;
  /** Mean magnitude over all pitches, before the floor is taken off. */
  readonly level: number;
};

/** Half an octave to each side. */
const AROUND = 6 * BINS_A_SEMITONE;

/** How far each place is evened out against its surroundings: 0 not at all, 1 wholly (Mauch and Dixon 2010: 1). */
const EVENING = 0.7;

/** Where the registers fade into each other, as weights of keys: chords from about C3, the bass up to about C4. */
const REGISTERS = {
  chords: { from: 43, full: 55, until: 80, end: 89 },
  bass: { from: 27, full: 28, until: 46, end: 58 },
} as const;

function registerWeight(
  key: number,
  { from, full, until, end }: Readonly<Record<'from' | 'full' | 'until' | 'end', number>>,
) {
  return Math.max(0, Math.min(1, (key - from) / (full - from), (end - key) / (end - until)));
}

/**
 * The chroma of each slice between two ascending times, from the mean of its frames: what stands out
 * of its surroundings, told apart into notes with their overtones.
 */
export function chromaSpans(spectrum: PitchSpectrum, edges: readonly Seconds[]): ChromaSpan[] {
  const floorless = floorTaken(spectrum);
  return edges.slice(1).map((toSec, i) => {
    const fromSec = edges[i]!;
    const first = Math.min(spectrum.frameCount - 1, Math.ceil(fromSec * spectrum.frameRate));
    const last = Math.max(
      first,
      Math.min(spectrum.frameCount - 1, Math.ceil(toSec * spectrum.frameRate) - 1),
    );
    const mean = meanOf(floorless.levels, first, last);
    let level = 0;
    for (let f = first; f <= last; f++) level += floorless.loudness[f]! / (last - first + 1);
    return { fromSec, toSec, ...foldedNotes(noteSalience(mean)), level };
  });
}

function meanOf(levels: Float32Array, first: number, last: number): Float32Array {
  const mean = new Float32Array(PITCH_BINS);
  for (let f = first; f <= last; f++)
    for (let i = 0; i < PITCH_BINS; i++)
      mean[i]! += levels[f * PITCH_BINS + i]! / (last - first + 1);
  return mean;
}

function foldedNotes(salience: Float32Array): { readonly chroma: Chroma; readonly bass: Chroma } {
  const chroma = new Float32Array(12);
  const bass = new Float32Array(12);
  for (let note = 0; note < NOTE_COUNT; note++) {
    const key = NOTE_RANGE.lowest + note;
    const strength = Math.sqrt(salience[note]!);
    chroma[key % 12]! += strength * registerWeight(key, REGISTERS.chords);
    bass[key % 12]! += strength * registerWeight(key, REGISTERS.bass);
  }
  return { chroma, bass };
}

/** Every frame with what lies under the mean of its surroundings set to 0, the rest evened out by their spread. */
function floorTaken({ levels, frameCount }: PitchSpectrum) {
  const out = new Float32Array(levels.length);
  const loudness = new Float32Array(frameCount);
  const sums = new Float64Array(PITCH_BINS + 1);
  const squares = new Float64Array(PITCH_BINS + 1);
  for (let frame = 0; frame < frameCount; frame++) {
    const at = frame * PITCH_BINS;
    for (let i = 0; i < PITCH_BINS; i++) {
      const x = levels[at + i]!;
      sums[i + 1] = sums[i]! + x;
      squares[i + 1] = squares[i]! + x * x;
    }
    loudness[frame] = sums[PITCH_BINS]! / PITCH_BINS;
    for (let i = 0; i < PITCH_BINS; i++) {
      const low = Math.max(0, i - AROUND);
      const high = Math.min(PITCH_BINS, i + AROUND + 1);
      const mean = (sums[high]! - sums[low]!) / (high - low);
      const above = levels[at + i]! - mean;
      if (above <= 0) continue;
      const spread = Math.sqrt(
        Math.max(0, (squares[high]! - squares[low]!) / (high - low) - mean * mean),
      );
      out[at + i] = above / (spread + 1e-5) ** EVENING;
    }
  }
  return { levels: out, loudness };
}
