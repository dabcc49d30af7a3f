/** Numbers that look random and are the same for the same seed. */
export type Random = {
  /** Uniform in 0…1, 1 excluded. */
  readonly uniform: () => number;
  /** Normally distributed with mean 0 and standard deviation 1. */
  readonly normal: () => number;
  /** Uniform whole number from 0 up to `count`, excluded. */
  readonly index: (count: number) => number;
};

/** Mulberry32: a 32-bit state mixed once a draw (published by its author as public domain). */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  // Box and Muller; 1 − u keeps the logarithm finite.
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal, index: (count) => Math.floor(uniform() * count) };
}
