import type { PatternId } from '../../core/ids.ts';
import {
  type Ending,
  endingBar,
  type Hands,
  type Hit,
  type LeftHit,
  type Pattern,
  patternSteps,
  patternTicks,
  type RightHit,
  type Step,
  type Touch,
} from '../../core/rhythm/pattern.ts';
import { barTicks } from '../../core/time/meter.ts';
import type { Ticks } from '../../core/time/ticks.ts';
import type { HandName } from '../../core/voicing/voicing.ts';
import { type Edit, inPattern, mapped, withParts } from './edit.ts';
import { orderedTones, settledEndingHits, settledHits } from './settle.ts';

/** What a hit of either hand is. */
export type HitOf = { readonly left: LeftHit; readonly right: RightHit };

/** Which hits of a pattern are meant: those of its bars, or those of its ending, whose ticks count from the ending's start. */
export type Scope = 'main' | 'ending';

/** Both hands of a scope; undefined for the ending of a pattern that has none. */
export function handsOf(pattern: Pattern, scope: Scope): Hands | undefined {
  return scope === 'main' ? pattern : pattern.ending;
}

/** Length of a scope in ticks. */
export function scopeTicks(pattern: Pattern, scope: Scope): Ticks {
  return scope === 'main' ? patternTicks(pattern) : barTicks(pattern.meter);
}

/** The steps of a scope's grid, end to end from its start. */
export function scopeSteps(pattern: Pattern, scope: Scope): Step[] {
  return patternSteps((scope === 'ending' && endingBar(pattern)) || pattern);
}

/** The pattern with other hits of one hand, settled. */
function withHits<Hand extends HandName>(
  pattern: Pattern,
  hand: Hand,
  scope: Scope,
  hits: readonly HitOf[Hand][],
): Pattern {
  const hands = handsOf(pattern, scope);
  if (!hands) return pattern;
  const end = scopeTicks(pattern, scope);
  if (scope === 'main')
    return withParts<Pattern>(pattern, { [hand]: settledHits<HitOf[Hand]>(hits, end) });
  const settled = settledEndingHits<HitOf[Hand]>(hits, end);
  return withParts(pattern, { ending: withParts<Ending>(hands, { [hand]: settled }) });
}

function inHits<Hand extends HandName>(
  patternId: PatternId,
  hand: Hand,
  scope: Scope,
  change: (hits: readonly HitOf[Hand][], pattern: Pattern) => readonly HitOf[Hand][],
): Edit {
  return inPattern(patternId, (pattern) => {
    const hits = handsOf(pattern, scope)?.[hand] as readonly HitOf[Hand][] | undefined;
    return hits ? withHits(pattern, hand, scope, change(hits, pattern)) : pattern;
  });
}

function inHit<Hand extends HandName>(
  patternId: PatternId,
  hand: Hand,
  at: Ticks,
  scope: Scope,
  change: (hit: HitOf[Hand], pattern: Pattern) => HitOf[Hand],
): Edit {
  return inHits(patternId, hand, scope, (hits, pattern) =>
    mapped(hits, (hit) => (hit.at === at ? change(hit, pattern) : hit)),
  );
}

/** A hit that is added or moved ends with the pattern; it is tied over the end by being made longer. */
function endedWithin<H extends Hit>(hit: H, pattern: Pattern, scope: Scope): H {
  const room = scopeTicks(pattern, scope) - hit.at;
  return hit.length > room ? { ...hit, length: room } : hit;
}

function isInside(tick: Ticks, pattern: Pattern, scope: Scope): boolean {
  return tick >= 0 && Math.round(tick) < scopeTicks(pattern, scope);
}

/**
 * Adds a hit. It ends at the latest where the hand's next one begins, and cuts the one before
 * short; on a tick that has a hit both become one. Nothing where it lies outside the pattern, is
 * not as long as a tick or plays nothing.
 */
export function addHit<Hand extends HandName>(
  patternId: PatternId,
  hand: Hand,
  hit: HitOf[Hand],
  scope: Scope = 'main',
): Edit {
  return inHits(patternId, hand, scope, (hits, pattern) =>
    isInside(hit.at, pattern, scope) && hit.length >= 1 && hit.play.length > 0
      ? [...hits, endedWithin(hit, pattern, scope)]
      : hits,
  );
}

/** Removes the hit of a hand that stands at a tick. */
export function removeHit(
  patternId: PatternId,
  hand: HandName,
  at: Ticks,
  scope: Scope = 'main',
): Edit {
  return inHits(patternId, hand, scope, (hits) => hits.filter((hit) => hit.at !== at));
}

/**
 * Moves a hit of a hand to another tick, where it becomes one with a hit that stands there; it keeps
 * its length as far as there is room. A drag is best made of moves that all start from the project
 * before it, so that hits which are only passed over stay.
 */
export function moveHit(
  patternId: PatternId,
  hand: HandName,
  fromTick: Ticks,
  toTick: Ticks,
  scope: Scope = 'main',
): Edit {
  return inHit(patternId, hand, fromTick, scope, (hit, pattern) =>
    isInside(toTick, pattern, scope) ? endedWithin({ ...hit, at: toTick }, pattern, scope) : hit,
  );
}

/** Sets how long a hit stands, in ticks: at least 1, at most to the hand's next hit, the last one's over the end. */
export function setHitLength(
  patternId: PatternId,
  hand: HandName,
  at: Ticks,
  length: Ticks,
  scope: Scope = 'main',
): Edit {
  return inHit(patternId, hand, at, scope, (hit) => ({ ...hit, length }));
}

/**
 * Moves a hit's end along the grid to the next step (1) or the one before (−1); it stays at least to
 * its own step's end, and the hand's last hit can be tied over the end, along the first steps again.
 */
export function lengthenHit(
  patternId: PatternId,
  hand: HandName,
  at: Ticks,
  by: 1 | -1,
  scope: Scope = 'main',
): Edit {
  return inHit(patternId, hand, at, scope, (hit, pattern) => {
    const whole = scopeTicks(pattern, scope);
    const inside = scopeSteps(pattern, scope).map((step) => step.at + step.length);
    const ends = [...inside, ...inside.map((tick) => tick + whole)].filter((tick) => tick > hit.at);
    const end = hit.at + hit.length;
    const next = by === 1 ? ends.find((tick) => tick > end) : ends.findLast((tick) => tick < end);
    return next === undefined ? hit : { ...hit, length: next - hit.at };
  });
}

/** What a hit plays, in the order of the tone table, each tone once. Nothing where the list is empty. */
export function setHitPlay<Hand extends HandName>(
  patternId: PatternId,
  hand: Hand,
  at: Ticks,
  play: HitOf[Hand]['play'],
  scope: Scope = 'main',
): Edit {
  return inHit<Hand>(patternId, hand, at, scope, (hit) =>
    play.length === 0 ? hit : { ...hit, play: orderedTones<Hit['play'][number]>(play) },
  );
}

export function setHitTouch(
  patternId: PatternId,
  hand: HandName,
  at: Ticks,
  touch: Touch,
  scope: Scope = 'main',
): Edit {
  return inHit(patternId, hand, at, scope, (hit) => ({ ...hit, touch }));
}

/** Whether a hit sounds for its length or is short. */
export function setHitHeld(
  patternId: PatternId,
  hand: HandName,
  at: Ticks,
  held: boolean,
  scope: Scope = 'main',
): Edit {
  return inHit(patternId, hand, at, scope, (hit) => ({ ...hit, held }));
}

/** Whether a hit that sounds over a chord change takes the chord it leads into. */
export function setHitAnticipates(
  patternId: PatternId,
  hand: HandName,
  at: Ticks,
  anticipates: boolean,
  scope: Scope = 'main',
): Edit {
  return inHit(patternId, hand, at, scope, (hit) =>
    withParts<HitOf[HandName]>(hit, { anticipates: anticipates || undefined }),
  );
}
