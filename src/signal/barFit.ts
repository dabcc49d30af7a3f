import type { FitGround } from './beatFit.ts';
import { cosine, mean, SLOTS, STRANDS, slotStrengths } from './beatFit.ts';

/** Bars that are looked for, in beats, likeliest first. */
export const BAR_LENGTHS = [4, 3, 2, 5, 6] as const;

export type BarLength = (typeof BAR_LENGTHS)[number];

/** What is seen at each beat: rows of one number a beat, each measured by its own mean, mostly 0 to 3. */
export type BeatSights = {
  readonly rows: readonly Float32Array[];
  /** How alike the beat is to the ones 1, 2, 3 … before, averaged over the recording. */
  readonly likeness: Readonly<Record<number, number>>;
  readonly beatCount: number;
};

const LAGS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16];

/** Looks at each beat (frames of the rises): attacks by band on it and halfway after it, and change of harmony. */
export function beatSights(beats: readonly number[], ground: FitGround): BeatSights {
  const { values, beatCount } = slotStrengths(beats, ground);
  const strength = (k: number, g: number, s: number) => values[(k * STRANDS + g) * SLOTS + s]!;
  const rows: Float32Array[] = [];
  for (let g = 0; g < STRANDS; g++) {
    rows.push(Float32Array.from({ length: beatCount }, (_, k) => strength(k, g, 0)));
  }
  for (const g of [0, 3])
    rows.push(Float32Array.from({ length: beatCount }, (_, k) => strength(k, g, 6)));
  for (const g of [0, 3])
    rows.push(
      Float32Array.from({ length: beatCount }, (_, k) =>
        k > 0 ? Math.max(strength(k - 1, g, 9), strength(k - 1, g, 8)) : 0,
      ),
    );
  const [bass, above] = changes(beats, ground);
  rows.push(bass, above);
  return { rows: rows.map(byMean), likeness: likenesses(values, beatCount), beatCount };
}

function byMean(row: Float32Array): Float32Array {
  const level = mean(row) + 0.02;
  return row.map((value) => Math.min(4, value / level));
}

/** How far the chroma of a beat turns away from the one before: of the bass, and above it. */
function changes(beats: readonly number[], { evidence }: FitGround): [Float32Array, Float32Array] {
  const { chroma, chromaRate, frameRate } = evidence;
  const sums = beats.slice(0, -1).map((beat, k) => {
    const from = Math.round((beat / frameRate) * chromaRate) + 1;
    const to = Math.max(from + 1, Math.round((beats[k + 1]! / frameRate) * chromaRate));
    const sum = new Float32Array(24);
    for (let frame = from; frame < to; frame++)
      for (let c = 0; c < 24; c++) sum[c]! += chroma[24 * frame + c] ?? 0;
    return sum;
  });
  const turn = (from: number, to: number) =>
    Float32Array.from(sums, (sum, k) => {
      if (k === 0) return 0;
      // Against two beats before, so that a chord that spreads over its beat changes once.
      const before = sums[k - 1]!.map((value, c) => value + 0.5 * (sums[k - 2]?.[c] ?? 0));
      return 1 - cosine(sum.subarray(from, to), before.subarray(from, to));
    });
  return [turn(0, 12), turn(12, 24)];
}

function likenesses(values: Float32Array, beatCount: number): Record<number, number> {
  const size = STRANDS * SLOTS;
  return Object.fromEntries(
    LAGS.map((lag) => {
      let sum = 0;
      for (let k = lag; k < beatCount; k++)
        sum += cosine(
          values.subarray(k * size, (k + 1) * size),
          values.subarray((k - lag) * size, (k - lag + 1) * size),
        );
      return [lag, beatCount > lag ? sum / (beatCount - lag) : 0];
    }),
  );
}

/**
 * Numbers that tell whether every `length`-th beat from `phase` on is a downbeat. Weights are shared
 * between lengths for what a downbeat is, and apart for what the other beats of the bar are.
 */
export function barFeatures(sights: BeatSights, length: BarLength, phase: number): number[] {
  const { rows, likeness } = sights;
  const at = rows.map((row) =>
    Array.from({ length }, (_, position) => meanEvery(row, (phase + position) % length, length)),
  );
  const downbeat = at.map((positions) => positions[0]! - mean(positions));
  const hyper = [4, rows.length - 2, rows.length - 1].map((r) =>
    Math.abs(
      meanEvery(rows[r]!, phase % (2 * length), 2 * length) -
        meanEvery(rows[r]!, (phase + length) % (2 * length), 2 * length),
    ),
  );
  const four = length === 4;
  const three = length === 3;
  const zeros = at.map(() => 0);
  const bar =
    (likeness[length] ?? 0) - mean(LAGS.filter((l) => l <= 8).map((l) => likeness[l] ?? 0));
  return [
    ...downbeat,
    ...hyper,
    ...(four ? at.map((p) => p[2]! - mean(p)) : zeros),
    ...(four ? at.map((p) => p[1]! - p[3]!) : zeros),
    ...(three ? at.map((p) => p[1]! - p[2]!) : zeros),
    ...(length === 2 ? downbeat : zeros),
    ...(four ? downbeat : zeros),
    ...BAR_LENGTHS.flatMap((l) =>
      l === length
        ? [1, bar, (likeness[2 * length] ?? likeness[length] ?? 0) - (likeness[length + 1] ?? 0)]
        : [0, 0, 0],
    ),
  ];
}

function meanEvery(row: Float32Array, first: number, every: number): number {
  let sum = 0;
  let count = 0;
  for (let k = first; k < row.length; k += every) {
    sum += row[k]!;
    count++;
  }
  return count > 0 ? sum / count : 0;
}
