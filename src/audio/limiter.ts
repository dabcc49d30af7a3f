/** Up to this level sound passes unchanged: −6 dBFS. */
export const LIMITER_KNEE = 0.5;

/** No sample leaves the limiter higher than this: a hair under −1 dBFS. */
export const LIMITER_CEILING = 0.89;

/** Input is limited smoothly up to this many times full scale; beyond, it stays at the ceiling. */
const INPUT_RANGE = 8;

/** Points of the curve: steps of 1/1024 of full scale, with one point exactly at zero. */
const POINTS = 2 * INPUT_RANGE * 1024 + 1;

/**
 * What the limiter makes of one sample: the same up to the knee, above it bent towards the ceiling
 * (a hyperbolic tangent, with no corner at the knee), never over it. Odd: −x gives −limited(x).
 */
export function limited(sample: number): number {
  const size = Math.abs(sample);
  if (size <= LIMITER_KNEE) return sample;
  const room = LIMITER_CEILING - LIMITER_KNEE;
  return Math.sign(sample) * (LIMITER_KNEE + room * Math.tanh((size - LIMITER_KNEE) / room));
}

/** A sound passes from `input` to `output`. */
export type Limiter = { readonly input: AudioNode; readonly output: AudioNode };

/**
 * A limiter without memory, hence without delay and overshoot (docs/decisions/002-limiter.md):
 * every sample becomes `limited(sample)`, at the moment it comes in.
 */
export function createLimiter(context: BaseAudioContext): Limiter {
  const input = new GainNode(context, { gain: 1 / INPUT_RANGE });
  const curve = Float32Array.from({ length: POINTS }, (_, i) =>
    limited(((2 * i) / (POINTS - 1) - 1) * INPUT_RANGE),
  );
  const output = new WaveShaperNode(context, { curve, oversample: 'none' });
  input.connect(output);
  return { input, output };
}
