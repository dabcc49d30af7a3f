import type { Semitones } from '../harmony/pitch.ts';
import { groupStarts } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { BandBar, BandNote } from './band.ts';

/** A stretch of music and the pitch class (0 = C … 11 = B) that is most likely its root. */
export type RootSpan = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly root: number;
};

/** A note and how much it says about the root. */
export type WeighedNote = BandNote & { readonly weight: number };

/**
 * How much a note supports a root so many semitones below it: unison, fifth, major third, minor
 * seventh and second as in Parncutt 1988 (from memory), the minor third added.
 */
const ROOT_SUPPORT: Readonly<Record<Semitones, number>> = { 0: 10, 7: 5, 4: 3, 3: 2, 10: 2, 2: 1 };

/** A note that starts with the stretch counts this much more, for it is where chords change. */
const DOWNBEAT_WEIGHT = 2;

/** Log odds against a change of root at a bar line and inside a bar. */
const CHANGE_COST = { barLine: 0.5, insideBar: 1.2 } as const;

const PITCH_CLASSES = Array.from({ length: 12 }, (_, pitchClass) => pitchClass);

/** So near to a stretch's start a note starts with it. */
const TOGETHER_TICKS: Ticks = 60;

type Stretch = { readonly startTick: Ticks; readonly endTick: Ticks; readonly opensBar: boolean };

/** The stress groups of every bar: halves in 4/4 and 6/8, three and two in 5/4, whole bars in 3/4. */
function stretches(bars: readonly BandBar[], endTick: Ticks): Stretch[] {
  const starts = bars.flatMap(({ startTick, meter }) =>
    groupStarts(meter).map((at) => ({ startTick: startTick + at, opensBar: at === 0 })),
  );
  return starts.map((start, i) => ({ ...start, endTick: starts[i + 1]?.startTick ?? endTick }));
}

/** How strongly a stretch supports each of the twelve roots. */
function support(notes: readonly WeighedNote[], { startTick, endTick }: Stretch): number[] {
  const sums = PITCH_CLASSES.map(() => 0);
  for (const note of notes) {
    const from = Math.max(startTick, note.startTick);
    const to = Math.min(endTick, note.startTick + note.durationTicks);
    if (to <= from) continue;
    const opens = Math.abs(note.startTick - startTick) <= TOGETHER_TICKS;
    const weight = note.weight * (to - from) * (opens ? DOWNBEAT_WEIGHT : 1);
    for (const root of PITCH_CLASSES)
      sums[root]! += weight * (ROOT_SUPPORT[(note.keyNumber - root + 120) % 12] ?? 0);
  }
  return sums;
}

/** Cost of each root of a stretch: minus the logarithm of its share of the support. */
function rootCosts(sums: readonly number[]): number[] {
  const total = sums.reduce((sum, s) => sum + s, 0);
  return sums.map((s) => (total === 0 ? 0 : -Math.log(s / total + 0.01)));
}

/**
 * The most likely root of each stress group of the bars. Long notes, notes that open the group and
 * heavily weighed ones (the bass) count most; a root carries on until there is reason for another.
 * Found as the cheapest path through all groups (dynamic programming). `notes` ascend by start;
 * neighbours with one root are joined. Without notes there are no spans.
 */
export function likelyRoots(
  notes: readonly WeighedNote[],
  bars: readonly BandBar[],
  endTick: Ticks,
): RootSpan[] {
  if (notes.length === 0) return [];
  const parts = stretches(bars, endTick);
  const from: number[][] = [];
  let best = PITCH_CLASSES.map(() => 0);
  for (const part of parts) {
    const change = part.opensBar ? CHANGE_COST.barLine : CHANGE_COST.insideBar;
    const cheapest = best.indexOf(Math.min(...best));
    const costs = rootCosts(
      support(
        notes.filter(
          (n) => n.startTick < part.endTick && n.startTick + n.durationTicks > part.startTick,
        ),
        part,
      ),
    );
    const previous = PITCH_CLASSES.map((root) =>
      best[root]! <= best[cheapest]! + change ? root : cheapest,
    );
    best = PITCH_CLASSES.map((root) => {
      const before = previous[root]!;
      return best[before]! + (before === root ? 0 : change) + costs[root]!;
    });
    from.push(previous);
  }
  let root = best.indexOf(Math.min(...best));
  const roots = parts.map(() => 0);
  for (let i = parts.length - 1; i >= 0; i--) {
    roots[i] = root;
    root = from[i]![root]!;
  }
  return joined(
    parts.map(({ startTick, endTick: end }, i) => ({ startTick, endTick: end, root: roots[i]! })),
  );
}

function joined(spans: readonly RootSpan[]): RootSpan[] {
  const result: RootSpan[] = [];
  for (const span of spans) {
    const last = result.at(-1);
    if (last?.root === span.root) result[result.length - 1] = { ...last, endTick: span.endTick };
    else result.push(span);
  }
  return result;
}
