import type { HitMatching } from '../core/practice/matchHits.ts';
import type { PlayedNote } from '../core/practice/playedHits.ts';
import type { PracticeTarget, TakeRecord } from '../core/practice/takeRecord.ts';
import { scoreTake } from '../core/practice/takeScore.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { bpmOf, type ExpectedStretch } from './expectedOfPass.ts';
import { type BarRange, type Score, scoreSeconds } from './score.ts';
import type { SoundingPass } from './soundingPass.ts';
import { joined, matchingBetween, matchStretches } from './takeMatching.ts';

/** A pass that was stopped so shortly before its end was played through. */
const NEARLY_SEC: Seconds = 0.25;

/**
 * What was asked of the player, sitting by sitting: a playing of the song, or a rung of a drill from
 * its first pass on, as long as it goes on; where a rung is begun again, another one.
 */
export function sittingsOf(stretches: readonly ExpectedStretch[]): ExpectedStretch[][] {
  const sittings: ExpectedStretch[][] = [];
  for (const stretch of stretches) {
    const before = sittings.at(-1)?.at(-1)?.pass;
    if (before && goesOn(before, stretch.pass)) sittings.at(-1)!.push(stretch);
    else sittings.push([stretch]);
  }
  return sittings;
}

function goesOn(before: SoundingPass, pass: SoundingPass): boolean {
  if (pass.passIndex < before.passIndex) return false;
  const [one, other] = [before.plan.drill, pass.plan.drill];
  if (!one || !other || pass.passIndex === before.passIndex) return true;
  return one.rung === other.rung && other.pass > one.pass;
}

/** A record and the time of the clock from which on it was played; not yet when that was. */
export type TakePart = { readonly record: Omit<TakeRecord, 'atMs'>; readonly fromSec: Seconds };

/** What was asked of the player just before a sitting and just after it. */
export type Beside = {
  readonly before: ExpectedStretch | undefined;
  readonly after: ExpectedStretch | undefined;
};

/**
 * The parts of a sitting: what was played of one target, with the same hands, at one tempo and level, in
 * the order in which they began. `notes` are all that was played then; what lies just `beside` the
 * sitting is looked at, too, as its first and last hits would else count as extra ones here.
 */
export function partsOf(
  sitting: readonly ExpectedStretch[],
  beside: Beside,
  notes: readonly PlayedNote[],
  sees: TakeRecord['sees'],
): TakePart[] {
  const { before, after } = beside;
  const near = [...(before ? [before] : []), ...sitting, ...(after ? [after] : [])];
  const matching = matchStretches(near, notes, sees);
  const parts = new Map<string, ExpectedStretch[]>();
  for (const stretch of sitting) {
    if (!stretch.target) continue;
    const key = JSON.stringify(kindOf(stretch, stretch.target));
    parts.set(key, [...(parts.get(key) ?? []), stretch]);
  }
  return [...parts.values()].map((stretches) => partOf(stretches, sitting, matching, sees));
}

function kindOf({ pass: { score }, hand }: ExpectedStretch, target: PracticeTarget) {
  const { level } = score;
  return { target, hand, bpm: bpmOf(score), ...(level !== undefined && { level }) };
}

function partOf(
  stretches: readonly ExpectedStretch[],
  sitting: readonly ExpectedStretch[],
  matching: HitMatching,
  sees: TakeRecord['sees'],
): TakePart {
  const first = stretches[0]!;
  const slices = stretches.map(({ pass }) => matchingBetween(matching, pass.fromSec, pass.toSec));
  const changesSec = stretches.flatMap((each) => each.changesSec);
  return {
    fromSec: Math.max(first.pass.fromSec, first.pass.originSec),
    record: {
      ...kindOf(first, first.target!),
      passes: wholePasses(stretches, sitting),
      sees,
      score: scoreTake(joined(slices), { changesSec }),
    },
  };
}

/** How many passes were played from beginning to end, all of it in this part. */
function wholePasses(
  stretches: readonly ExpectedStretch[],
  sitting: readonly ExpectedStretch[],
): number {
  const ofPass = (list: readonly ExpectedStretch[], index: number) =>
    list.filter(({ pass }) => pass.passIndex === index);
  const indices = [...new Set(stretches.map(({ pass }) => pass.passIndex))];
  return indices.filter((index) => {
    const mine = ofPass(stretches, index);
    return mine.length === ofPass(sitting, index).length && isWhole(mine);
  }).length;
}

function isWhole(stretches: readonly ExpectedStretch[]): boolean {
  const [first, last] = [stretches[0]!.pass, stretches.at(-1)!.pass];
  const { request } = last.plan;
  const endSec = last.originSec + scoreSeconds(last.score, last.score.toTick);
  return (
    first.fromSec <= first.originSec + NEARLY_SEC &&
    last.toSec >= endSec - NEARLY_SEC &&
    (request.kind !== 'song' || isAllOf(last.score, request.range))
  );
}

/** Whether a score plays all of its bars, without jumps into or out of them. */
function isAllOf({ timeline, fromTick, toTick }: Score, range: BarRange | undefined): boolean {
  const startOf = (bar: number) => timeline.bars[bar]?.startTick ?? timeline.lengthTicks;
  const end = range?.endBar ?? timeline.bars.length;
  return fromTick === startOf(range?.firstBar ?? 0) && toTick === startOf(end);
}

/** Fewer hits of what was broken off say nothing. */
const FEWEST_HITS = 8;

/** Whether a take is worth keeping: somebody played, and not just a few hits of something broken off. */
export function isWorthKeeping({ score, passes }: Pick<TakeRecord, 'score' | 'passes'>): boolean {
  return score.played > 0 && (passes > 0 || score.expected >= FEWEST_HITS);
}
