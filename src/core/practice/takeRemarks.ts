import type { HandName } from '../voicing/voicing.ts';
import type { HitHand } from './expectedHits.ts';
import type { HandScore, TakeScore } from './takeScore.ts';
import { type Grade, gradeOf } from './tolerance.ts';
import { type WeakStep, weakSteps } from './weakSteps.ts';

/** One thing to be told of a take. Milliseconds and per cent are positive unless said otherwise. */
export type TakeRemark =
  | { readonly kind: 'nothing-played' }
  /** So little fits that the rest would say nothing. */
  | { readonly kind: 'unrelated'; readonly matched: number; readonly expected: number }
  | { readonly kind: 'clean' }
  | {
      readonly kind: 'missed';
      readonly hand: HitHand;
      readonly hits: number;
      readonly expected: number;
    }
  | { readonly kind: 'extra'; readonly hits: number; readonly played: number }
  /** `hits` of `played` hits had a key that is not in them. */
  | { readonly kind: 'wrong-keys'; readonly hits: number; readonly played: number }
  /** Slower and slowing down are negative. */
  | { readonly kind: 'drift'; readonly fasterPercent: number; readonly gainPercent: number }
  /** A hand is early or late all along. */
  | {
      readonly kind: 'early' | 'late';
      readonly hand: HitHand;
      readonly ms: number;
      readonly grade: Grade;
    }
  | {
      readonly kind: 'even' | 'uneven';
      readonly hand: HitHand;
      readonly ms: number;
      readonly grade: Grade;
    }
  /** One hand comes clearly before the other. */
  | { readonly kind: 'hands-apart'; readonly first: HandName; readonly ms: number }
  | { readonly kind: 'late-changes'; readonly ms: number }
  | { readonly kind: 'weak-step'; readonly step: WeakStep };

/** When something is worth telling. Our own choices, but for what a source is named for. */
const WORTH_TELLING = {
  /** Below this F what was played was something else. */
  related: 0.5,
  /** Share of hits missed or extra. */
  share: 0.05,
  /** The least change of tempo that is noticed (Drake & Botte 1993). */
  driftPercent: 1.5,
  /** Two onsets this far apart are told apart (Hirsh 1959, from memory). */
  handsApartMs: 20,
  /** Chord changes that come so much later, if that is so many times its standard error. */
  changesLaterMs: 10,
  clear: 2.5,
  steps: 3,
} as const;

/** What there is to say of a take, what matters most first; the interface makes the sentences. */
export function takeRemarks(score: TakeScore): TakeRemark[] {
  if (score.played === 0) return [{ kind: 'nothing-played' }];
  if (score.f < WORTH_TELLING.related)
    return [{ kind: 'unrelated', matched: score.matched, expected: score.expected }];
  return [
    ...(score.clean ? [{ kind: 'clean' } as const] : []),
    ...countRemarks(score),
    ...driftRemarks(score),
    ...score.hands.flatMap((hand) => latenessRemarks(hand, score)),
    ...score.hands.flatMap((hand) => evennessRemarks(hand, score)),
    ...handsApartRemarks(score),
    ...changeRemarks(score),
    ...weakSteps(score)
      .slice(0, WORTH_TELLING.steps)
      .map((step) => ({ kind: 'weak-step', step }) as const),
  ];
}

function countRemarks({ hands, expected, played, matched, keys }: TakeScore): TakeRemark[] {
  const missed = hands
    .map((hand) => ({ hand: hand.hand, hits: hand.expected - hand.hits, expected: hand.expected }))
    .filter(({ hits, expected: of }) => hits > WORTH_TELLING.share * of)
    .map((each) => ({ kind: 'missed', ...each }) as const);
  const extra = played - matched;
  return [
    ...missed,
    ...(extra > WORTH_TELLING.share * expected
      ? [{ kind: 'extra', hits: extra, played } as const]
      : []),
    ...(keys && keys.wrongHits > 0
      ? [{ kind: 'wrong-keys', hits: keys.wrongHits, played: keys.hits } as const]
      : []),
  ];
}

function driftRemarks({ drift }: TakeScore): TakeRemark[] {
  const most = Math.max(Math.abs(drift?.fasterPercent ?? 0), Math.abs(drift?.gainPercent ?? 0));
  return drift && most >= WORTH_TELLING.driftPercent ? [{ kind: 'drift', ...drift }] : [];
}

/** Lateness within the best band is not worth a word, nor is what may be chance. */
function latenessRemarks(
  { hand, hits, meanMs, spreadMs }: HandScore,
  score: TakeScore,
): TakeRemark[] {
  if (meanMs === undefined || score.gapSec === undefined) return [];
  const grade = gradeOf(meanMs / 1000, score.gapSec);
  const errorMs = (spreadMs ?? 0) / Math.sqrt(hits);
  if (grade === 'very-good' || Math.abs(meanMs) < WORTH_TELLING.clear * errorMs) return [];
  return [{ kind: meanMs < 0 ? 'early' : 'late', hand, ms: Math.abs(meanMs), grade }];
}

function evennessRemarks({ hand, unevennessMs }: HandScore, score: TakeScore): TakeRemark[] {
  if (unevennessMs === undefined || score.gapSec === undefined) return [];
  const grade = gradeOf(unevennessMs / 1000, score.gapSec);
  return [{ kind: grade === 'very-good' ? 'even' : 'uneven', hand, ms: unevennessMs, grade }];
}

function handsApartRemarks({ hands }: TakeScore): TakeRemark[] {
  const meanOfHand = (name: HandName) => hands.find((each) => each.hand === name)?.meanMs;
  const [left, right] = [meanOfHand('left'), meanOfHand('right')];
  if (left === undefined || right === undefined) return [];
  const ms = Math.abs(left - right);
  if (ms < WORTH_TELLING.handsApartMs) return [];
  return [{ kind: 'hands-apart', first: left < right ? 'left' : 'right', ms }];
}

function changeRemarks({ changes }: TakeScore): TakeRemark[] {
  if (!changes) return [];
  const { laterMs, errorMs } = changes;
  const isLate = laterMs >= WORTH_TELLING.changesLaterMs && laterMs > WORTH_TELLING.clear * errorMs;
  return isLate ? [{ kind: 'late-changes', ms: laterMs }] : [];
}
