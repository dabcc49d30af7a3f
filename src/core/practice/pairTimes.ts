import type { Seconds } from '../time/ticks.ts';

/** Places of a pair in the two lists. */
export type TimePair = { readonly expected: number; readonly played: number };

/** The best pairing of the beginnings of both lists, ending with the pair `last` where it has one. */
type Pairing = {
  readonly pairs: number;
  readonly totalSec: Seconds;
  readonly last?: TimePair;
  readonly before?: Pairing;
};

/**
 * The best pairings of one beginning of the expected times with the first `from`, `from` + 1 …
 * played times. With fewer they cannot change any more, with more than the last they do not gain.
 */
type Row = { readonly from: number; readonly best: readonly Pairing[] };

const NOTHING_PAIRED: Pairing = { pairs: 0, totalSec: 0 };

/**
 * Pairs times one to one and in order, none farther apart than `windowSec` (edges included): as many
 * pairs as possible and, among those, the least total distance. Exact, by dynamic programming over
 * the pairs that are near enough alone; time and memory grow with their number. Both lists ascend;
 * throws where one does not.
 */
export function pairTimes(
  expected: readonly Seconds[],
  played: readonly Seconds[],
  windowSec: Seconds,
): TimePair[] {
  requireAscending(expected);
  requireAscending(played);
  let row: Row = { from: 0, best: [NOTHING_PAIRED] };
  for (const place of expected.keys()) row = nextRow(row, place, expected, played, windowSec);
  return pairsOf(row.best.at(-1)!);
}

function requireAscending(times: readonly Seconds[]): void {
  const place = times.findIndex((time, i) => !(time >= (times[i - 1] ?? time)));
  if (place >= 0) throw new Error(`times must ascend: ${times[place - 1]}, ${times[place]}`);
}

/** The row after one more expected time. */
function nextRow(
  before: Row,
  place: number,
  expected: readonly Seconds[],
  played: readonly Seconds[],
  windowSec: Seconds,
): Row {
  const at = expected[place]!;
  let { from } = before;
  while (from < played.length && at - played[from]! > windowSec) from++;
  const without = (count: number) =>
    before.best[Math.min(count - before.from, before.best.length - 1)]!;
  const best = [without(from)];
  for (let next = from; next < played.length && played[next]! - at <= windowSec; next++) {
    const unpaired = better(without(next + 1), best.at(-1)!);
    best.push(better(unpaired, withPair(without(next), place, next, played[next]! - at)));
  }
  return { from, best };
}

function withPair(before: Pairing, expected: number, played: number, distance: Seconds): Pairing {
  return {
    pairs: before.pairs + 1,
    totalSec: before.totalSec + Math.abs(distance),
    last: { expected, played },
    before,
  };
}

function better(one: Pairing, other: Pairing): Pairing {
  if (one.pairs !== other.pairs) return one.pairs > other.pairs ? one : other;
  return other.totalSec < one.totalSec ? other : one;
}

function pairsOf(pairing: Pairing): TimePair[] {
  const pairs: TimePair[] = [];
  for (let at: Pairing | undefined = pairing; at; at = at.before) if (at.last) pairs.push(at.last);
  return pairs.toReversed();
}
