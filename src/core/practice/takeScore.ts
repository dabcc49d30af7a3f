import type { Seconds } from '../time/ticks.ts';
import { type ChangeScore, changeScore } from './changeScore.ts';
import { type Deviations, deviationsOf } from './deviations.ts';
import { type Drift, type DriftFit, type DriftPoint, fitDrift } from './drift.ts';
import type { ExpectedHit, HitHand } from './expectedHits.ts';
import { type KeyScore, keyScore } from './keyScore.ts';
import type { HitMatching, HitPair } from './matchHits.ts';
import { type StepScore, stepScores } from './stepScores.ts';
import { GRADES, type Grade, gradeOf } from './tolerance.ts';

/**
 * The hits of one hand. `unevennessMs` is how far they scatter around the hand's own course, drift
 * taken out; `spreadMs` is that with the drift in it.
 */
export type HandScore = Deviations & {
  readonly hand: HitHand;
  readonly expected: number;
  readonly extra: number;
  readonly unevennessMs?: number;
};

/**
 * What a take was worth. `precision` is the share of what was played that was meant, `recall` the
 * share of what was meant that was played, `f` their harmonic mean; all three are 0 where nothing
 * was played (or nothing meant) and 1 where neither was. Deviations are played − expected, in ms.
 * What cannot be said of this take is absent.
 */
export type TakeScore = {
  readonly expected: number;
  readonly played: number;
  readonly matched: number;
  readonly precision: number;
  readonly recall: number;
  readonly f: number;
  /** The usual gap between expected hits (the median), which tolerance follows; absent without any. */
  readonly gapSec?: Seconds;
  readonly all: Deviations;
  /** The hands that something is expected of: left, right, both. */
  readonly hands: readonly HandScore[];
  /** Each step that something is expected at, by pattern, place and hand. */
  readonly steps: readonly StepScore[];
  readonly drift?: Drift;
  readonly changes?: ChangeScore;
  readonly keys?: KeyScore;
  /** How many of the played hits lie in each band of tolerance. */
  readonly grades: Readonly<Record<Grade, number>>;
  /** Whether the take was clean: see `CLEAN`. */
  readonly clean: boolean;
};

/**
 * A take is clean if at least `inTime` of the expected hits are played within the band “fair”, and
 * at most `extra` of the played hits are extra and `wrong` of those with known keys have a wrong
 * key. Our own choice: nine of ten.
 */
export const CLEAN = { inTime: 0.9, extra: 0.1, wrong: 0.1 } as const;

/** What is known of the music beside its hits. `changesSec`: when its chords change, ascending, on the hits' clock. */
export type TakeContext = { readonly changesSec?: readonly Seconds[] };

/** The score of a take out of its matching; see `TakeScore`. */
export function scoreTake(matching: HitMatching, context: TakeContext = {}): TakeScore {
  const { pairs, missed, extra } = matching;
  const expected = pairs.length + missed.length;
  const played = pairs.length + extra.length;
  const matched = pairs.length;
  const fit = fitDrift(pairs.map(driftPoint));
  const steadied = pairs.map((pair, i) => ({ ...pair, deviationSec: fit.withoutDrift[i]! }));
  const gapSec = usualGap([...pairs.map((pair) => pair.expected), ...missed]);
  const changes = changeScore(steadied, missed, context.changesSec ?? []);
  const keys = keyScore(pairs);
  const grades = gradesOf(pairs);
  return {
    expected,
    played,
    matched,
    precision: shareOf(matched, played, expected),
    recall: shareOf(matched, expected, played),
    f: shareOf(2 * matched, expected + played, 0),
    ...(gapSec === undefined ? {} : { gapSec }),
    all: deviationsOf(pairs.map((pair) => pair.deviationSec)),
    hands: handScores(matching, fit),
    steps: stepScores(steadied, missed),
    ...(fit.drift && { drift: fit.drift }),
    ...(changes && { changes }),
    ...(keys && { keys }),
    grades,
    clean:
      expected > 0 &&
      matched - grades.off >= CLEAN.inTime * expected &&
      extra.length <= CLEAN.extra * played &&
      (keys?.wrongHits ?? 0) <= CLEAN.wrong * (keys?.hits ?? 0),
  };
}

function driftPoint({ expected, deviationSec }: HitPair): DriftPoint {
  return { group: expected.hand, atSec: expected.atSec, deviationSec };
}

function usualGap(hits: readonly ExpectedHit[]): Seconds | undefined {
  const gaps = hits.map((hit) => hit.gapSec).toSorted((a, b) => a - b);
  return gaps[gaps.length >> 1];
}

/** A share; of nothing it is 0, or 1 if there was nothing on the other side either. */
function shareOf(part: number, whole: number, other: number): number {
  if (whole > 0) return part / whole;
  return other > 0 ? 0 : 1;
}

function gradesOf(pairs: readonly HitPair[]): Record<Grade, number> {
  const grades = pairs.map((pair) => gradeOf(pair.deviationSec, pair.expected.gapSec));
  const count = (grade: Grade) => grades.filter((each) => each === grade).length;
  return Object.fromEntries(GRADES.map((grade) => [grade, count(grade)])) as Record<Grade, number>;
}

function handScores({ pairs, missed, extra }: HitMatching, fit: DriftFit): HandScore[] {
  return (['left', 'right', 'both'] as const).flatMap((hand) => {
    const places = [...pairs.keys()].filter((i) => pairs[i]!.expected.hand === hand);
    const expected = places.length + missed.filter((hit) => hit.hand === hand).length;
    if (expected === 0) return [];
    const unevennessMs = unevenness(fit, places, pairs.length);
    return [
      {
        ...deviationsOf(places.map((i) => pairs[i]!.deviationSec)),
        hand,
        expected,
        extra: extra.filter((hit) => hit.hand === hand).length,
        ...(unevennessMs === undefined ? {} : { unevennessMs }),
      },
    ];
  });
}

/** Scatter around the course; each number that describes the drift takes its share of freedom from the hand. */
function unevenness(fit: DriftFit, places: readonly number[], pairs: number): number | undefined {
  const { hits, spreadMs } = deviationsOf(places.map((i) => fit.withoutDrift[i]!));
  const free = hits - 1 - (fit.terms * hits) / pairs;
  return spreadMs === undefined || free <= 0 ? undefined : spreadMs * Math.sqrt((hits - 1) / free);
}
