/**
 * A linear model over standardised terms: each is measured by its mean and deviation over the material
 * the model was fitted on. Where there is one weight more than terms, the last one stands alone.
 */
export type LogisticModel = {
  readonly means: readonly number[];
  readonly deviations: readonly number[];
  readonly weights: readonly number[];
};

/** A standardised term counts for at most so many deviations. */
export const MOST_DEVIATIONS = 6;

/** The sum of the weighed terms: log odds, or what one of several choices scores. */
export function weighedSum(
  terms: readonly number[],
  { means, deviations, weights }: LogisticModel,
): number {
  let sum = weights[terms.length] ?? 0;
  for (let i = 0; i < terms.length; i++) {
    const standard = (terms[i]! - means[i]!) / deviations[i]!;
    sum += Math.min(MOST_DEVIATIONS, Math.max(-MOST_DEVIATIONS, standard)) * weights[i]!;
  }
  return sum;
}

/** What log odds say as a probability. */
export function likelihood(odds: number): number {
  return 1 / (1 + Math.exp(-odds));
}
