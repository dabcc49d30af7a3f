import { DRUM_MODEL } from './drumModel.ts';
import { MOST_DEVIATIONS } from './logistic.ts';
import { STRUCK_BANDS } from './struckBands.ts';

/** Bands that are pooled for the products: deep, body, middle, sharp, high. */
const POOLS = [
  [0, 3],
  [3, 6],
  [6, 10],
  [10, 13],
  [13, 16],
] as const;

/** The kinds of a look (see `strikesIn`) that are pooled: share of a strong rise, fall, level after. */
const POOLED_KINDS = [1, 3, 2] as const;

/** A product counts for at most so much. */
const MOST_PRODUCT = 9;

/** A look with every number measured by its mean and deviation over the training material. */
export function standardised(look: Float32Array): Float32Array {
  const { means, deviations } = DRUM_MODEL;
  return look.map((value, i) =>
    Math.min(MOST_DEVIATIONS, Math.max(-MOST_DEVIATIONS, (value - means[i]!) / deviations[i]!)),
  );
}

/**
 * How likely an attack is each piece by its look alone, as log odds: a logistic model over the
 * standardised look and the products of its pooled numbers, so that it can say "deep and sharp".
 */
export function firstSight(look: Float32Array): number[] {
  const terms = [...look, ...products(look), 1];
  return DRUM_MODEL.firstSight.map((weights) =>
    terms.reduce((sum, term, i) => sum + term * weights[i]!, 0),
  );
}

function products(look: Float32Array): number[] {
  const pooled = POOLED_KINDS.flatMap((kind) =>
    POOLS.map(([from, to]) => {
      let sum = 0;
      for (let b = from; b < to; b++) sum += look[kind * STRUCK_BANDS + b]!;
      return sum / (to - from);
    }),
  );
  return pooled.flatMap((a, i) =>
    pooled.slice(i).map((b) => 0.5 * Math.min(MOST_PRODUCT, Math.max(-MOST_PRODUCT, a * b))),
  );
}
