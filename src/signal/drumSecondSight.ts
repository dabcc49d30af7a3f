import { DRUM_MODEL } from './drumModel.ts';
import { likelihood, weighedSum } from './logistic.ts';
import { attackCourse, COURSE_RATE, repeated, repeatingLag } from './repetition.ts';

/** An attack after `firstSight`: its time, its standardised look, its log odds of kick, snare and hat. */
export type SightedAttack = {
  readonly sec: number;
  readonly look: Float32Array;
  readonly odds: readonly number[];
};

/** Periods that patterns may have, and strokes of one drum. */
const PATTERN_SEC = { shortest: 1.1, longest: 5.2 } as const;
const STROKE_SEC = { shortest: 0.1, longest: 0.66 } as const;

/** Log odds below this are no part of either mode. */
const LEAST_ODDS = -4;

/** Neighbours further away than this are all the same. */
const FAR_SEC = 0.5;

const mean = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((a, b) => a + b, 0) / values.length;

/**
 * How likely each attack is a kick, a snare and a hat, 0 to 1, now that the whole recording has been
 * seen once: its log odds against the two modes of all odds of that piece; how like it is to what
 * seem to be the recording's own kicks, snares and hats; whether the same piece is struck a pattern
 * and a stroke before and after. A logistic model joins these.
 */
export function secondSight(attacks: readonly SightedAttack[]): number[][] {
  if (attacks.length === 0) return [];
  const secs = attacks.map((a) => a.sec);
  const span = secs.at(-1)! - secs[0]!;
  const likely = [0, 1, 2].map((p) => attacks.map((a) => likelihood(a.odds[p]!)));
  const courses = likely.map((probabilities) => attackCourse(secs, probabilities));
  const patternLag = lagBetween(courses, PATTERN_SEC);
  const likeness = ownLikeness(attacks, likely);
  const whole = [0, 1, 2].map((p) => ({
    ...modesOf(attacks.map((a) => a.odds[p]!)),
    strokeLag: lagBetween([courses[p]!], STROKE_SEC),
    share: (mean(likely[p]!) * attacks.length) / (span + 1),
  }));
  const density = attacks.length / Math.max(1, span);
  return attacks.map(({ sec, odds }, i) => {
    const again = courses.map((course) => repeated(course, sec, patternLag));
    const gaps = [
      Math.min(FAR_SEC, i > 0 ? sec - secs[i - 1]! : 1),
      Math.min(FAR_SEC, i + 1 < secs.length ? secs[i + 1]! - sec : 1),
    ];
    const like = likeness.map((row) => row[i]!);
    return [0, 1, 2].map((p) => {
      const { threshold, apart, top, strokeLag, share } = whole[p]!;
      const own = odds[p]!;
      const over = own - threshold;
      const stroke = repeated(courses[p]!, sec, strokeLag);
      const others = [0, 1, 2].filter((other) => other !== p);
      const terms = [
        own,
        top - own,
        over,
        Math.tanh(over),
        threshold,
        apart,
        top,
        over * apart,
        stroke,
        stroke * own,
        again[p]!,
        (again[p]! * own) / 3,
        share,
        ...others.map((o) => odds[o]!),
        ...likely.map((l) => l[i]!),
        ...like,
        like[p]! - Math.max(...others.map((o) => like[o]!)),
        ...others.map((o) => again[o]!),
        density,
        ...gaps,
      ];
      return likelihood(weighedSum(terms, DRUM_MODEL.secondSight[p]!));
    });
  });
}

function lagBetween(
  courses: readonly Float64Array[],
  { shortest, longest }: { readonly shortest: number; readonly longest: number },
): number {
  return repeatingLag(
    courses,
    Math.round(shortest * COURSE_RATE),
    Math.round(longest * COURSE_RATE),
  );
}

/**
 * The threshold that parts the odds into two modes with the largest variance between them (Otsu
 * 1979), how far the modes are apart, and the mean of the highest odds (1 in 25, at least 3).
 */
function modesOf(odds: readonly number[]): {
  readonly threshold: number;
  readonly apart: number;
  readonly top: number;
} {
  const ascending = odds.toSorted((a, b) => a - b);
  const top = mean(ascending.slice(-Math.max(3, Math.floor(odds.length / 25))));
  const part = ascending.filter((o) => o > LEAST_ODDS);
  let best = { threshold: 0, apart: 0, top };
  if (part.length < 4) return best;
  const total = part.reduce((a, b) => a + b, 0);
  let low = 0;
  let most = -1;
  for (let n = 1; n < part.length; n++) {
    low += part[n - 1]!;
    const apart = (total - low) / (part.length - n) - low / n;
    const between = n * (part.length - n) * apart ** 2;
    if (between <= most) continue;
    most = between;
    best = { threshold: (part[n - 1]! + part[n]!) / 2, apart, top };
  }
  return best;
}

/** By piece and attack: the cosine between the attack's look and the mean look of the likely ones, both from the mean of all. */
function ownLikeness(
  attacks: readonly SightedAttack[],
  likely: readonly (readonly number[])[],
): number[][] {
  const size = attacks[0]!.look.length;
  const middle = weighedLook(
    attacks,
    attacks.map(() => 1),
    0,
    size,
  );
  return likely.map((probabilities) => {
    const weights = probabilities.map((p) => p * p);
    const own = weighedLook(attacks, weights, 0.5, size).map((v, i) => v - middle[i]!);
    const ownLength = Math.hypot(...own);
    return attacks.map(({ look }) => {
      let dot = 0;
      let length = 0;
      for (let i = 0; i < size; i++) {
        const from = look[i]! - middle[i]!;
        dot += from * own[i]!;
        length += from * from;
      }
      return dot / (Math.sqrt(length) * ownLength + 1e-6);
    });
  });
}

function weighedLook(
  attacks: readonly SightedAttack[],
  weights: readonly number[],
  besides: number,
  size: number,
): Float64Array {
  const sum = new Float64Array(size);
  let total = besides;
  for (const [a, { look }] of attacks.entries()) {
    total += weights[a]!;
    for (let i = 0; i < size; i++) sum[i]! += weights[a]! * look[i]!;
  }
  return sum.map((v) => v / total);
}
