/** A stretch of bars; stretches of one `label` (0, 1, … by first coming) are the same music again. */
export type RepeatedPart = {
  readonly firstBar: number;
  readonly bars: number;
  readonly label: number;
};

/** From this mean likeness of their bars on, two stretches are the same music. */
const SAME = 0.8;

/** What a stretch costs to tell, and each of its bars where it comes again or will, in bars of new music. */
const PART_COST = 1;
const AGAIN_COST = 0.25;
const RETURNING_COST = 0.6;

/** Lengths in bars of the parts of songs, and what their unevenness costs (common practice: eights before fours, twelves and sixteens). */
const LENGTHS: readonly { readonly bars: number; readonly cost: number }[] = [
  { bars: 4, cost: 0.5 },
  { bars: 8, cost: 0 },
  { bars: 12, cost: 1 },
  { bars: 16, cost: 2 },
  { bars: 2, cost: 2 },
  { bars: 6, cost: 1.5 },
  { bars: 10, cost: 1.5 },
  { bars: 1, cost: 3 },
  { bars: 3, cost: 3 },
  { bars: 5, cost: 3 },
  { bars: 7, cost: 3 },
  { bars: 9, cost: 3 },
];

/** What the unevenness of less than four bars costs at most where the music begins or ends: a pick-up, a last chord that rings on. */
const SHORT_END = 1;

/** How alike two bars are by index, 0 (nothing in common) to 1 (the same). */
export type BarLikeness = (a: number, b: number) => number;

function meanLikeness(a: number, b: number, bars: number, likeness: BarLikeness): number {
  let sum = 0;
  for (let i = 0; i < bars; i++) sum += likeness(a + i, b + i);
  return sum / bars;
}

/** The best likeness of a stretch with any that lies from a bar on and is over by another; 0 where there is none. */
function bestWithin(
  first: number,
  bars: number,
  [from, to]: readonly [number, number],
  likeness: BarLikeness,
): number {
  let best = 0;
  for (let other = from; other + bars <= to; other++)
    best = Math.max(best, meanLikeness(other, first, bars, likeness));
  return best;
}

function costPerBar(first: number, bars: number, barCount: number, likeness: BarLikeness): number {
  const before = bestWithin(first, bars, [0, first], likeness);
  if (before >= SAME) return AGAIN_COST + (1 - before);
  const after = bestWithin(first, bars, [first + bars, barCount], likeness);
  return after >= SAME ? RETURNING_COST : 1;
}

/** Bars at which the cheapest division of `barCount` bars begins its parts, found by dynamic programming. */
function partStarts(barCount: number, likeness: BarLikeness): number[] {
  const costs = [0];
  const from = [0];
  for (let end = 1; end <= barCount; end++) {
    costs[end] = Number.POSITIVE_INFINITY;
    for (const { bars, cost } of LENGTHS) {
      const first = end - bars;
      if (first < 0) continue;
      const perBar = costPerBar(first, bars, barCount, likeness);
      const isShortEnd = bars < 4 && (first === 0 || end === barCount);
      const uneven = isShortEnd ? Math.min(cost, SHORT_END) : cost;
      const total = costs[first]! + PART_COST + uneven + perBar * bars;
      if (total < costs[end]!) {
        costs[end] = total;
        from[end] = first;
      }
    }
  }
  const starts: number[] = [];
  for (let end = barCount; end > 0; end = from[end]!) starts.unshift(from[end]!);
  return starts;
}

/**
 * The parts of a song by repetition: the division of its bars that takes the least to tell, where music that came
 * before costs little (minimum description length, after Rissanen 1978; stripes of the self-similarity matrix as
 * in Foote 2000, docs/sources.md#folding). Parts of the same length that are alike have one label. Without bars there are none.
 */
export function repeatedParts(barCount: number, likeness: BarLikeness): RepeatedPart[] {
  const known = new Map<number, number>();
  const remembered: BarLikeness = (a, b) => {
    const place = a * barCount + b;
    const before = known.get(place);
    if (before !== undefined) return before;
    const value = likeness(a, b);
    known.set(place, value);
    return value;
  };
  const starts = partStarts(barCount, remembered);
  const parts: RepeatedPart[] = [];
  starts.forEach((firstBar, i) => {
    const bars = (starts[i + 1] ?? barCount) - firstBar;
    const same = parts.find(
      (part) =>
        part.bars === bars && meanLikeness(part.firstBar, firstBar, bars, remembered) >= SAME,
    );
    const label = same?.label ?? Math.max(-1, ...parts.map((part) => part.label)) + 1;
    parts.push({ firstBar, bars, label });
  });
  return parts;
}
