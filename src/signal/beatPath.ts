/** Intervals between beats that a path may take, in frames, ascending, about evenly spaced by ratio. */
export function beatIntervals(
  fastestBpm: number,
  slowestBpm: number,
  framesPerSec: number,
  count: number,
): Int32Array {
  const shortest = (60 * framesPerSec) / fastestBpm;
  const longest = (60 * framesPerSec) / slowestBpm;
  const spaced = Array.from({ length: count }, (_, i) =>
    Math.round(shortest * (longest / shortest) ** (i / (count - 1))),
  );
  return Int32Array.from(new Set(spaced));
}

/** How a path of beats is chosen. */
export type BeatPathOptions = {
  readonly intervals: Int32Array;
  /** A change of the interval by a ratio r costs `steadiness` × |r − 1| nats, once a beat. */
  readonly steadiness: number;
  /** Nats for each interval, once a beat: a prior on the tempo. */
  readonly intervalGain?: Float64Array;
};

/** A beat is this many times as long as the part of it in which its attack lies. */
const BEAT_SHARE = 10;

const NEVER = -1e30;

/**
 * The likeliest row of beats, as frames, ascending. `probability` is, per frame, how likely a beat
 * begins there, between 0 and 1. The model is the bar pointer of Krebs, Böck and Widmer ("An
 * Efficient State-Space Model for Joint Tempo and Meter Tracking", ISMIR 2015) for one beat: the
 * pointer goes one position a frame and may change its tempo only at a beat; what is seen is the
 * probability in the first part of the beat and what remains of it elsewhere. Since between
 * beats the pointer has no choice, a whole beat is one step here: sums over it come from running
 * sums, and only beats keep a way back. Time grows with frames × intervals × those within reach.
 */
export function beatPath(probability: Float32Array, options: BeatPathOptions): number[] {
  const { intervals, steadiness, intervalGain } = options;
  const frames = probability.length;
  const count = intervals.length;
  const longest = intervals[count - 1]!;
  if (frames < 2) return [];
  const { on, off } = runningLogs(probability);
  const heads = intervals.map((interval) => Math.max(1, Math.round(interval / BEAT_SHARE)));
  // A beat may begin up to `longest` frames before the first one and end after the last one.
  // Scores are needed for one longest beat back only; the way back is kept whole.
  const entered = new Float64Array((longest + 1) * count).fill(NEVER);
  const cameFrom = new Uint8Array((frames + longest) * count);
  const change = changeCosts(intervals, steadiness);
  const left = new Float64Array(count);
  const beatScore = (start: number, i: number) => {
    const head = clamp(start + heads[i]!, 0, frames);
    const end = clamp(start + intervals[i]!, 0, frames);
    const from = clamp(start, 0, frames);
    return on[head]! - on[from]! + off[end]! - off[head]! + (intervalGain?.[i] ?? 0);
  };
  const rowOf = (frame: number) => ((frame + longest) % (longest + 1)) * count;
  const wayRowOf = (frame: number) => (frame + longest) * count;
  for (let frame = -longest + 1; frame < frames; frame++) {
    const row = rowOf(frame);
    const wayRow = wayRowOf(frame);
    let anyLeft = false;
    for (let i = 0; i < count; i++) {
      const start = frame - intervals[i]!;
      left[i] = NEVER;
      if (start <= -longest) continue;
      const before = entered[rowOf(start) + i]!;
      if (before === NEVER) continue;
      left[i] = before + beatScore(start, i);
      anyLeft = true;
    }
    for (let i = 0; i < count; i++) {
      // The first beat of all begins before or at frame 0, with any interval alike.
      entered[row + i] = frame <= 0 && frame > -intervals[i]! ? 0 : NEVER;
      if (!anyLeft || frame <= 0) continue;
      const { from, costs } = change[i]!;
      let best = entered[row + i]!;
      let bestFrom = i;
      for (let c = 0; c < costs.length; c++) {
        const score = left[from + c]! - costs[c]!;
        if (score > best) {
          best = score;
          bestFrom = from + c;
        }
      }
      entered[row + i] = best;
      cameFrom[wayRow + i] = bestFrom;
    }
  }
  return tracedBack({ frames, intervals, entered, cameFrom, rowOf, wayRowOf, beatScore });
}

type Trellis = {
  readonly frames: number;
  readonly intervals: Int32Array;
  readonly entered: Float64Array;
  readonly cameFrom: Uint8Array;
  readonly rowOf: (frame: number) => number;
  readonly wayRowOf: (frame: number) => number;
  readonly beatScore: (start: number, i: number) => number;
};

function tracedBack(trellis: Trellis): number[] {
  const { frames, intervals, entered, cameFrom, rowOf, wayRowOf, beatScore } = trellis;
  let best = NEVER;
  let at = 0;
  let interval = 0;
  for (let i = 0; i < intervals.length; i++)
    for (let start = frames - intervals[i]!; start < frames; start++) {
      if (start <= -intervals[i]!) continue;
      const before = entered[rowOf(start) + i]!;
      if (before === NEVER) continue;
      const score = before + beatScore(start, i);
      if (score > best) {
        best = score;
        at = start;
        interval = i;
      }
    }
  const beats: number[] = [];
  while (at > 0) {
    beats.push(at);
    interval = cameFrom[wayRowOf(at) + interval]!;
    at -= intervals[interval]!;
  }
  if (at === 0) beats.push(0);
  return beats.toReversed();
}

/** Running sums of the logs of both observations: entry n sums the frames before n. */
function runningLogs(probability: Float32Array): { on: Float64Array; off: Float64Array } {
  const on = new Float64Array(probability.length + 1);
  const off = new Float64Array(probability.length + 1);
  for (let n = 0; n < probability.length; n++) {
    on[n + 1] = on[n]! + Math.log(probability[n]!);
    off[n + 1] = off[n]! + Math.log((1 - probability[n]!) / (BEAT_SHARE - 1));
  }
  return { on, off };
}

/** For each new interval: the first old one within reach, and what the changes from there on cost. */
function changeCosts(
  intervals: Int32Array,
  steadiness: number,
): { readonly from: number; readonly costs: Float64Array }[] {
  const farthest = 12 / steadiness;
  return Array.from(intervals, (to) => {
    const ratios = Array.from(intervals, (old) => Math.abs(to / old - 1));
    const from = ratios.findIndex((ratio) => ratio <= farthest);
    const end = ratios.findLastIndex((ratio) => ratio <= farthest) + 1;
    return { from, costs: Float64Array.from(ratios.slice(from, end), (r) => steadiness * r) };
  });
}

function clamp(value: number, least: number, most: number): number {
  return value < least ? least : value > most ? most : value;
}
