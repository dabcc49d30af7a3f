import { barTicks } from '../time/meter.ts';
import type { Bpm } from '../time/tempoMap.ts';
import type { Seconds, Ticks } from '../time/ticks.ts';
import { groupBy } from './groupBy.ts';
import { HAND_LIMITS, type HandLimits } from './handLimits.ts';
import { type ImportanceContext, weighing } from './importance.ts';
import {
  isLongEnough,
  type Level,
  type LevelChecks,
  type LevelGrid,
  levelChecks,
} from './levels.ts';
import type { Hands, Hit } from './pattern.ts';

/** The pattern that is thinned, what the band plays in it, and where the chord changes. */
export type ThinContext = LevelGrid & ImportanceContext;

/**
 * The hits that a player of a level keeps at a tempo: the exact most important set of both hands'
 * hits (the greatest sum of `importanceOf`) that keeps to the level's limits (`keepsToLevel`) when
 * the pattern is played round and round. `bpm` counts what the meter's tempo counts (dotted
 * quarters in 6/8). Each level chooses among what the level above keeps, and level 5 among all
 * hits, so a lower level never has a hit that a higher one lacks. Hits are kept as they are. Of
 * sets that are equally important the one is taken that keeps the earlier hits, both hands before
 * the left and the left before the right. A hand that would be left with nothing keeps its most important
 * hit of each bar all the same (`answersOf`): the least that still is the pattern. `limits`: what the
 * player's hands do.
 */
export function thinHands(
  hands: Hands,
  level: Level,
  bpm: Bpm,
  context: ThinContext,
  limits: HandLimits = HAND_LIMITS,
): Hands {
  return ([5, 4, 3, 2, 1] as const)
    .filter((step) => step >= level)
    .reduce(
      (kept, step) => withBothHands(kept, levelChecks(step, bpm, context, limits), context),
      hands,
    );
}

/** The most important hits that a level lets stand, and of a hand that would have none its answers. */
function withBothHands(hands: Hands, checks: LevelChecks, context: ThinContext): Hands {
  const thinned = mostImportant(hands, checks, context);
  return {
    left: thinned.left.length > 0 ? thinned.left : answersOf(hands.left, checks, context),
    right: thinned.right.length > 0 ? thinned.right : answersOf(hands.right, checks, context),
  };
}

/**
 * The most important hit of each bar, wherever in its beat it stands and whatever the other hand does, as
 * long as the hand has the level's time from one to the next; the earlier of equals.
 */
function answersOf<H extends Hit>(
  hits: readonly H[],
  { gapSec, followSec }: LevelChecks,
  context: ThinContext,
): H[] {
  const importanceOf = weighing(context);
  const bar = barTicks(context.meter);
  const answers = [...groupBy(hits, ({ at }) => Math.floor(at / bar)).values()].map((inBar) =>
    inBar.reduce((best, hit) => (importanceOf(hit) > importanceOf(best) ? hit : best)),
  );
  const inTime = (from: H, to: H) => isLongEnough(gapSec(from.at, to.at), followSec(from, to));
  return answers.reduce<H[]>((kept, hit) => {
    const [first, last] = [kept[0], kept.at(-1)];
    return !first || !last || (inTime(last, hit) && inTime(hit, first)) ? [...kept, hit] : kept;
  }, []);
}

/** Hits of both hands at one tick. */
type Moment = {
  readonly at: Ticks;
  readonly left: Candidate | undefined;
  readonly right: Candidate | undefined;
};

type Candidate = { readonly hit: Hit; readonly importance: number };

/** The first and the last hit that a hand keeps so far, as long as they can still be too near to another. */
type Kept = { readonly first: Hit | undefined; readonly last: Hit | undefined };

type State = { readonly left: Kept; readonly right: Kept };

/** The best that can be kept from a moment on: its importance and, moment by moment, what is kept. */
type Best = { readonly importance: number; readonly take: Take; readonly rest: Best | undefined };

type Take = { readonly left: Candidate | undefined; readonly right: Candidate | undefined };

const NOTHING_KEPT: Kept = { first: undefined, last: undefined };

/** What the search needs to know at every step; from `freeAfterSec` apart on no two hits mind each other. */
type Search = {
  readonly moments: readonly Moment[];
  readonly checks: LevelChecks;
  readonly freeAfterSec: Seconds;
  readonly known: Map<string, Best | undefined>;
};

/** Dynamic programming over the moments of the pattern; what is far enough away is forgotten. */
function mostImportant(hands: Hands, checks: LevelChecks, context: ThinContext): Hands {
  const moments = momentsOf(hands, checks, context);
  const freeAfterSec = Math.max(
    checks.crossSec,
    ...longestFollow(hands.left, checks),
    ...longestFollow(hands.right, checks),
  );
  const search = { moments, checks, freeAfterSec, known: new Map<string, Best | undefined>() };
  const kept = new Set<Hit>();
  let best = bestFrom(0, { left: NOTHING_KEPT, right: NOTHING_KEPT }, search);
  for (; best; best = best.rest)
    for (const taken of [best.take.left, best.take.right]) if (taken) kept.add(taken.hit);
  return {
    left: hands.left.filter((hit) => kept.has(hit)),
    right: hands.right.filter((hit) => kept.has(hit)),
  };
}

/** How long a hand may need from any of its hits to any other; it depends on what they play alone. */
function longestFollow(hits: readonly Hit[], { followSec }: LevelChecks): Seconds[] {
  const kinds = [...new Map(hits.map((hit) => [hit.play.join(), hit])).values()];
  return kinds.flatMap((from) => kinds.map((to) => followSec(from, to)));
}

/** The best from a moment on; undefined where what is kept so far leaves no way to end. */
function bestFrom(index: number, given: State, search: Search): Best | undefined {
  const { moments, checks, known } = search;
  const moment = moments[index];
  if (!moment) return mayCloseUp(given, checks) ? END : undefined;
  const state = forgetful(given, moment.at, search);
  const { left, right } = state;
  const key = `${index} ${left.first?.at} ${left.last?.at} ${right.first?.at} ${right.last?.at}`;
  if (known.has(key)) return known.get(key);
  let best: Best | undefined;
  for (const take of takesOf(moment)) {
    if (!mayTake(take, state, checks)) continue;
    const rest = bestFrom(index + 1, after(state, take, search), search);
    if (!rest) continue;
    const importance = rest.importance + importanceOfTake(take);
    if (!best || importance > best.importance) best = { importance, take, rest };
  }
  known.set(key, best);
  return best;
}

function importanceOfTake({ left, right }: Take): number {
  return (left?.importance ?? 0) + (right?.importance ?? 0);
}

const END: Best = { importance: 0, take: { left: undefined, right: undefined }, rest: undefined };

function momentsOf(hands: Hands, checks: LevelChecks, context: ThinContext): Moment[] {
  const importanceOf = weighing(context);
  const candidates = (hits: readonly Hit[]) =>
    new Map(
      hits
        .filter((hit) => checks.mayStand(hit))
        .map((hit) => [hit.at, { hit, importance: importanceOf(hit) }]),
    );
  const [left, right] = [candidates(hands.left), candidates(hands.right)];
  return [...new Set([...left.keys(), ...right.keys()])]
    .toSorted((a, b) => a - b)
    .map((at) => ({ at, left: left.get(at), right: right.get(at) }));
}

/** What may be kept of a moment: both hands, one of them, or neither. */
function takesOf({ left, right }: Moment): Take[] {
  const none = undefined;
  return [
    ...(left && right ? [{ left, right }] : []),
    ...(left ? [{ left, right: none }] : []),
    ...(right ? [{ left: none, right }] : []),
    { left: none, right: none },
  ];
}

function mayTake(take: Take, state: State, checks: LevelChecks): boolean {
  return (
    mayStrike(take.left?.hit, state.left.last, state.right.last, checks) &&
    mayStrike(take.right?.hit, state.right.last, state.left.last, checks)
  );
}

/** Whether a hit may come after the last one of its own hand and the last one of the other hand. */
function mayStrike(
  hit: Hit | undefined,
  own: Hit | undefined,
  other: Hit | undefined,
  checks: LevelChecks,
): boolean {
  if (!hit) return true;
  const { gapSec, followSec, crossSec } = checks;
  if (own && !isLongEnough(gapSec(own.at, hit.at), followSec(own, hit))) return false;
  return !other || other.at === hit.at || isLongEnough(gapSec(other.at, hit.at), crossSec);
}

/** Whether the pattern may begin again after its last hits. */
function mayCloseUp({ left, right }: State, checks: LevelChecks): boolean {
  return (
    mayStrike(left.first, left.last, right.last, checks) &&
    mayStrike(right.first, right.last, left.last, checks)
  );
}

function after(state: State, take: Take, { checks, freeAfterSec }: Search): State {
  const kept = ({ first, last }: Kept, taken: Candidate | undefined): Kept => {
    if (!taken) return { first, last };
    // A first hit far from the start is as far from what comes before it the next time round.
    const { at } = taken.hit;
    const nearStart = at === 0 || checks.gapSec(0, at) < freeAfterSec;
    return { first: first ?? (!last && nearStart ? taken.hit : undefined), last: taken.hit };
  };
  return { left: kept(state.left, take.left), right: kept(state.right, take.right) };
}

/** The state without last hits that are too long ago to matter. */
function forgetful(state: State, at: Ticks, { checks, freeAfterSec }: Search): State {
  const near = ({ first, last }: Kept): Kept => ({
    first,
    last: last && checks.gapSec(last.at, at) < freeAfterSec ? last : undefined,
  });
  return { left: near(state.left), right: near(state.right) };
}
