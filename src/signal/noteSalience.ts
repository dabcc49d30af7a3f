import { BINS_A_SEMITONE, PITCH_BINS, PITCH_RANGE } from './pitchSpectrum.ts';

/** Keys that are looked for. */
export const NOTE_RANGE = { lowest: 28, highest: 88 } as const;

export const NOTE_COUNT = NOTE_RANGE.highest - NOTE_RANGE.lowest + 1;

const OVERTONES = 16;

/** An overtone has so much of the one below it (Mauch and Dixon 2010: 0.7). */
const OVERTONE_FALL = 0.7;

/** Half the width of a partial's peak in semitones. */
const PEAK_SEMITONES = 0.7;

const ROUNDS = 40;

/** What one note of each key looks like: `NOTE_COUNT` × `PITCH_BINS`, each of length 1. */
const PROFILES: Float32Array = noteProfiles();

/** How much each note's profile looks like each other's: `NOTE_COUNT` × `NOTE_COUNT`. */
const LIKENESS: Float32Array = profileLikeness();

function noteProfiles(): Float32Array {
  const profiles = new Float32Array(NOTE_COUNT * PITCH_BINS);
  for (let note = 0; note < NOTE_COUNT; note++) {
    const profile = profiles.subarray(note * PITCH_BINS, (note + 1) * PITCH_BINS);
    for (let n = 1; n <= OVERTONES; n++) addPeak(profile, note, n);
    const length = Math.hypot(...profile);
    for (let i = 0; i < PITCH_BINS; i++) profile[i]! /= length;
  }
  return profiles;
}

function addPeak(profile: Float32Array, note: number, overtone: number): void {
  const pitch = NOTE_RANGE.lowest + note + 12 * Math.log2(overtone) - PITCH_RANGE.lowest;
  const level = OVERTONE_FALL ** (overtone - 1);
  for (let i = 0; i < PITCH_BINS; i++) {
    const away = Math.abs((i - 1) / BINS_A_SEMITONE - pitch) / PEAK_SEMITONES;
    if (away < 1) profile[i]! += level * (0.5 + 0.5 * Math.cos(Math.PI * away));
  }
}

function profileLikeness(): Float32Array {
  const likeness = new Float32Array(NOTE_COUNT * NOTE_COUNT);
  for (let a = 0; a < NOTE_COUNT; a++)
    for (let b = 0; b < NOTE_COUNT; b++)
      likeness[a * NOTE_COUNT + b] = seenIn(b, PROFILES.subarray(a * PITCH_BINS));
  return likeness;
}

function seenIn(note: number, spectrum: Float32Array): number {
  let sum = 0;
  const from = note * PITCH_BINS;
  for (let i = 0; i < PITCH_BINS; i++) sum += PROFILES[from + i]! * spectrum[i]!;
  return sum;
}

/**
 * How much of each key from `NOTE_RANGE.lowest` up is in a spectrum of `PITCH_BINS` values ≥ 0: the
 * sum of notes with overtones that comes nearest to it, none of them negative (approximate
 * transcription by non-negative least squares, Mauch and Dixon 2010), by multiplicative updates (Lee
 * and Seung 2001).
 */
export function noteSalience(spectrum: Float32Array): Float32Array {
  const seen = Float32Array.from({ length: NOTE_COUNT }, (_, note) => seenIn(note, spectrum));
  const salience = seen.slice();
  for (let round = 0; round < ROUNDS; round++)
    for (let note = 0; note < NOTE_COUNT; note++) {
      if (!salience[note]) continue;
      let explained = 1e-12;
      const row = note * NOTE_COUNT;
      for (let other = 0; other < NOTE_COUNT; other++)
        explained += LIKENESS[row + other]! * salience[other]!;
      salience[note]! *= seen[note]! / explained;
    }
  return salience;
}
