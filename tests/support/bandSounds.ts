/** Sounds at the rate at which recordings are listened to. */
const RATE_HZ = 22050;

/** A row of numbers from −1 to 1 that looks like chance and is the same every time. */
export function seededNoise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    return state / 2 ** 31;
  };
}

const SOUNDS = {
  /** A sine that falls from 160 to 50 Hz, with a click. */
  kick: (t: number, noise: number) =>
    0.9 *
      Math.sin(2 * Math.PI * (50 * t + 110 * 0.03 * (1 - Math.exp(-t / 0.03)))) *
      Math.exp(-t / 0.15) +
    0.3 * noise * Math.exp(-t / 0.003),
  /** A tone of 190 Hz under noise. */
  snare: (t: number, noise: number) =>
    0.4 * Math.sin(2 * Math.PI * 190 * t) * Math.exp(-t / 0.06) + 0.4 * noise * Math.exp(-t / 0.12),
  /** Short noise through a high pass of 24 dB an octave: differences of differences. */
  hat: (t: number, n: number, before: readonly number[]) =>
    0.04 *
    (n - 4 * before[0]! + 6 * before[1]! - 4 * before[2]! + before[3]!) *
    Math.exp(-t / 0.03),
} as const;

export type PlayedDrums = Readonly<Record<keyof typeof SOUNDS, string>>;

/** A drum machine: one row of steps for each drum, x = struck, gone through so many times. */
export function playedDrums(
  rows: PlayedDrums,
  { stepSec, times }: { readonly stepSec: number; readonly times: number },
): Float32Array {
  const steps = rows.kick.length * times;
  const out = new Float32Array(Math.ceil((steps * stepSec + 0.5) * RATE_HZ));
  const noise = seededNoise(1);
  for (const drum of Object.keys(SOUNDS) as (keyof typeof SOUNDS)[])
    for (let step = 0; step < steps; step++) {
      if (rows[drum][step % rows[drum].length] !== 'x') continue;
      const from = Math.round(step * stepSec * RATE_HZ);
      let before: readonly number[] = [0, 0, 0, 0];
      for (let i = 0; i < 0.4 * RATE_HZ && from + i < out.length; i++) {
        const now = noise();
        out[from + i]! += 0.6 * SOUNDS[drum](i / RATE_HZ, now, before);
        before = [now, ...before.slice(0, 3)];
      }
    }
  return out;
}

export function steadyTone(hz: number, sec: number): Float32Array {
  return Float32Array.from(
    { length: sec * RATE_HZ },
    (_, i) => 0.3 * Math.sin((2 * Math.PI * hz * i) / RATE_HZ),
  );
}

export function whiteNoise(sec: number): Float32Array {
  const noise = seededNoise(2);
  return Float32Array.from({ length: sec * RATE_HZ }, () => 0.2 * noise());
}

/** Plucked bass notes one after another: eight partials, the higher ones weaker and sooner gone. */
export function pluckedLine(
  keys: readonly number[],
  { stepSec, centsHigh }: { readonly stepSec: number; readonly centsHigh: number },
): Float32Array {
  const out = new Float32Array(Math.ceil((keys.length * stepSec + 0.5) * RATE_HZ));
  for (const [step, key] of keys.entries()) {
    const hz = 440 * 2 ** ((key - 69 + centsHigh / 100) / 12);
    const from = Math.round(step * stepSec * RATE_HZ);
    for (let i = 0; i < stepSec * RATE_HZ; i++) {
      const t = i / RATE_HZ;
      const end = Math.min(1, (stepSec - t) / 0.02, t / 0.002);
      for (let h = 1; h <= 8; h++)
        out[from + i]! += ((0.3 * end) / h) * Math.sin(2 * Math.PI * hz * h * t) * Math.exp(-t * h);
    }
  }
  return out;
}
