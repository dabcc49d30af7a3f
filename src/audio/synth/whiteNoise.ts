/**
 * White noise that is the same on every run: each call gives the next value, even in −1…1.
 * `seed` is any whole number; equal seeds give equal noise (mulberry32, a public-domain generator).
 */
export function whiteNoise(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 0x80000000 - 1;
  };
}
