import type { BeatEvidence } from './beatEvidence.ts';
import type { OnsetBand } from './onsetBands.ts';

/** How much each band says of beats: all alike, the highest less, since cymbals play off-beats as well. */
const BAND_WEIGHTS: Readonly<Record<OnsetBand, number>> = {
  low: 1.2,
  body: 1,
  middle: 1,
  sharp: 1,
  high: 0.6,
};

/** The reach over which a band's own strength is averaged to weigh its attacks by, in seconds to each side. */
const LEVEL_SEC = 4;

/** A band whose average is below this share of a strong attack is not raised further. */
const LEAST_LEVEL = 0.02;

/**
 * Attacks of all bands together, one value ≥ 0 a frame, where 1 is a mean strong attack: each band is
 * measured by its root mean square within 4 s, so that a quiet verse counts like a loud chorus.
 */
export function combinedRise(evidence: BeatEvidence): Float32Array {
  const reach = Math.round(LEVEL_SEC * evidence.frameRate);
  const sum = new Float32Array(evidence.frames);
  for (const [band, weight] of Object.entries(BAND_WEIGHTS) as [OnsetBand, number][]) {
    const rise = Float32Array.from(evidence.rises[band], (value) => (value / 255) ** 2);
    const level = levelAround(rise, reach);
    for (let i = 0; i < sum.length; i++) sum[i]! += (weight * rise[i]!) / level[i]!;
  }
  return sum;
}

function levelAround(rise: Float32Array, reach: number): Float32Array {
  const energy = new Float64Array(rise.length + 1);
  for (let i = 0; i < rise.length; i++) energy[i + 1] = energy[i]! + rise[i]! ** 2;
  return Float32Array.from(rise, (_, i) => {
    const from = Math.max(0, i - reach);
    const to = Math.min(rise.length, i + reach + 1);
    return Math.max(LEAST_LEVEL, Math.sqrt((energy[to]! - energy[from]!) / (to - from)));
  });
}

/** The strength that is as likely a beat as not, in root mean squares of the combined rise. */
const EVEN_STRENGTH = 3;

/** How probable a beat is where nothing rises, and where all bands do: bounds for the logarithms. */
const LEAST_PROBABILITY = 0.03;
const MOST_PROBABILITY = 0.98;

/** How likely a beat begins at each frame, from the combined rise, for `beatPath`. */
export function beatProbability(combined: Float32Array): Float32Array {
  let energy = 0;
  for (const value of combined) energy += value * value;
  const level = Math.sqrt(energy / Math.max(1, combined.length));
  if (!(level > 0)) return new Float32Array(combined.length).fill(LEAST_PROBABILITY);
  return combined.map((value) => {
    const share = value / (EVEN_STRENGTH * level);
    const probability = share / (1 + share);
    return Math.min(MOST_PROBABILITY, Math.max(LEAST_PROBABILITY, probability));
  });
}
