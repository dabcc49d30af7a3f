/** Sound is measured in blocks of so many samples (46 ms at 22 050 Hz). */
const BLOCK_SAMPLES = 1024;

/** The loud parts that a recording is measured by: 1 block in 20 is louder. */
const LOUD_SHARE = 0.95;

/** What is quieter than this at its loud parts (−80 dB) is taken for silence. */
const QUIETEST = 1e-4;

/**
 * The amplitude of a sine as loud as the loud parts of a sound; undefined for silence, for a sound of
 * less than 46 ms and for one that is silent nearly throughout.
 */
export function loudAmplitude(samples: Float32Array): number | undefined {
  const powers: number[] = [];
  for (let from = 0; from + BLOCK_SAMPLES <= samples.length; from += BLOCK_SAMPLES) {
    let power = 0;
    for (let i = from; i < from + BLOCK_SAMPLES; i++) power += samples[i]! ** 2;
    powers.push(power / BLOCK_SAMPLES);
  }
  const loud = powers.toSorted((a, b) => a - b)[Math.floor(LOUD_SHARE * powers.length)] ?? 0;
  const amplitude = Math.sqrt(2 * loud);
  return amplitude < QUIETEST ? undefined : amplitude;
}
