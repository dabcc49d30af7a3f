import type { Seconds } from '../../core/time/ticks.ts';

/**
 * One overtone of a tone: which multiple of the fundamental, how strong against the others, and the
 * time in which it falls to a third (1/e).
 */
export type Overtone = {
  readonly multiple: number;
  readonly level: number;
  readonly fallSec: Seconds;
};

/** A pitched sound as the sum of its overtones, rising over `riseSec` to full strength. */
export type OvertoneSound = {
  readonly overtones: readonly Overtone[];
  readonly riseSec: Seconds;
  readonly lengthSec: Seconds;
};

/** A round, dark bass string: strong fundamental, overtones that die away much sooner. */
export const BASS_SOUND: OvertoneSound = {
  overtones: Array.from({ length: 12 }, (_, i) => ({
    multiple: i + 1,
    level: Math.abs(Math.sin((i + 1) * Math.PI * 0.23)) / (i + 1) ** 1.15,
    fallSec: 1.6 / (1 + 0.55 * i),
  })),
  riseSec: 0.0015,
  lengthSec: 4,
};

/** A soft, steady tone for the sung line: few overtones, a gentle start. */
export const SUNG_SOUND: OvertoneSound = {
  overtones: [
    { multiple: 1, level: 1, fallSec: 6 },
    { multiple: 2, level: 0.35, fallSec: 4 },
    { multiple: 3, level: 0.18, fallSec: 3 },
    { multiple: 4, level: 0.06, fallSec: 2 },
  ],
  riseSec: 0.012,
  lengthSec: 6,
};

/** Adds a sine that falls to 1/e in `fallSec`, by a two-sample recurrence: far cheaper than a sine per sample. */
function addFallingSine(
  out: Float32Array,
  freqHz: number,
  level: number,
  fallSec: Seconds,
  sampleRate: number,
): void {
  const turn = (2 * Math.PI * freqHz) / sampleRate;
  const fall = Math.exp(-1 / (fallSec * sampleRate));
  const back1 = 2 * fall * Math.cos(turn);
  const back2 = fall * fall;
  let last = 0;
  let now = level * fall * Math.sin(turn);
  for (let i = 0; i < out.length; i++) {
    out[i]! += now;
    const next = back1 * now - back2 * last;
    last = now;
    now = next;
  }
}

/**
 * The sound at `freqHz`; overtones over 0.45 of the sample rate are left out. First sample not
 * zero, no fixed loudness.
 */
export function overtoneTone(
  sound: OvertoneSound,
  freqHz: number,
  sampleRate: number,
): Float32Array<ArrayBuffer> {
  const out = new Float32Array(Math.round(sound.lengthSec * sampleRate));
  for (const { multiple, level, fallSec } of sound.overtones)
    if (multiple * freqHz < 0.45 * sampleRate)
      addFallingSine(out, multiple * freqHz, level, fallSec, sampleRate);
  const rise = Math.max(1, Math.round(sound.riseSec * sampleRate));
  for (let i = 0; i < rise; i++) out[i]! *= (i + 1) / rise;
  return out;
}
