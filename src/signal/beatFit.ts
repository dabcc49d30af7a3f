import type { BeatEvidence } from './beatEvidence.ts';
import { ONSET_BAND_NAMES } from './onsetBands.ts';

/** Places looked at within a beat: twelve, so that halves, thirds and quarters are among them. */
export const SLOTS = 12;

/** Strength of each band at each slot of each beat: `beatCount` × bands × `SLOTS`. */
export type SlotStrengths = { readonly values: Float32Array; readonly beatCount: number };

const BANDS = ONSET_BAND_NAMES.length;

/** The bands, and last all of them together. */
export const STRANDS = BANDS + 1;

/** The bands' rises one after another as shares of a strong attack, and what is the same for all candidates. */
export type FitGround = {
  readonly rises: readonly Float32Array[];
  readonly combined: Float32Array;
  readonly change: Float32Array;
  readonly evidence: BeatEvidence;
};

/** What candidates are judged on, worked out once. `combined` as of `combinedRise`. */
export function fitGround(evidence: BeatEvidence, combined: Float32Array): FitGround {
  const rises = ONSET_BAND_NAMES.map((band) =>
    Float32Array.from(evidence.rises[band], (value) => value / 255),
  );
  return { rises, combined, change: harmonicChange(evidence), evidence };
}

/** How far the chroma of the 0.4 s after a chroma frame turns away from the 0.4 s before: 0 to 1. */
export function harmonicChange({ chroma }: BeatEvidence): Float32Array {
  const frames = chroma.length / 24;
  const reach = 4;
  const change = new Float32Array(frames);
  const before = new Float64Array(24);
  const after = new Float64Array(24);
  for (let frame = reach; frame + reach <= frames; frame++) {
    before.fill(0);
    after.fill(0);
    for (let n = 0; n < reach; n++)
      for (let c = 0; c < 24; c++) {
        before[c]! += chroma[24 * (frame - 1 - n) + c]!;
        after[c]! += chroma[24 * (frame + n) + c]!;
      }
    change[frame] = 1 - cosine(before, after);
  }
  return change;
}

export function cosine(a: Float64Array | Float32Array, b: Float64Array | Float32Array): number {
  let ab = 0;
  let aa = 1e-9;
  let bb = 1e-9;
  for (let i = 0; i < a.length; i++) {
    ab += a[i]! * b[i]!;
    aa += a[i]! ** 2;
    bb += b[i]! ** 2;
  }
  return ab / Math.sqrt(aa * bb);
}

/**
 * Numbers that tell whether beats are those that players count, each about −2 to 2. `beats` are
 * frames of the rises, ascending, at least five.
 */
export function beatFeatures(beats: readonly number[], ground: FitGround): number[] {
  const slots = slotStrengths(beats, ground);
  const intervals = beats.slice(1).map((beat, i) => beat - beats[i]!);
  const interval = intervals.toSorted((a, b) => a - b)[intervals.length >> 1]!;
  const u = Math.log2((60 * ground.evidence.frameRate) / interval / 110);
  return [
    u,
    u * u,
    Math.max(0, Math.abs(u) - 0.5) ** 2,
    Math.max(0, u - 0.5),
    Math.max(0, -u - 0.5),
    ...tempoSigns(u),
    ...profileFeatures(slots),
    ...alternationFeatures(slots),
    ...likenessFeatures(slots),
    ...densityFeatures(slots),
    ...changeFeatures(beats, ground),
  ];
}

/** Where the tempo lies between so many octaves from 110 BPM: triangles that learn how usual a tempo is. */
const TEMPO_MARKS = [-1, -0.7, -0.4, -0.15, 0.1, 0.35, 0.6, 0.85];

function tempoSigns(u: number): number[] {
  return TEMPO_MARKS.map((mark) => Math.max(0, 1 - Math.abs(u - mark) / 0.3));
}

/** Sees, per beat, the strongest frame of each slot in each band and in all together. */
export function slotStrengths(
  beats: readonly number[],
  { rises, combined }: FitGround,
): SlotStrengths {
  const beatCount = beats.length - 1;
  const values = new Float32Array(beatCount * STRANDS * SLOTS);
  const bands = [...rises, combined];
  for (let k = 0; k < beatCount; k++) {
    const from = beats[k]!;
    const step = (beats[k + 1]! - from) / SLOTS;
    for (let s = 0; s < SLOTS; s++) {
      const first = Math.max(0, Math.round(from + (s - 0.5) * step));
      const end = Math.min(
        combined.length,
        Math.max(first + 1, Math.round(from + (s + 0.5) * step)),
      );
      for (let g = 0; g <= BANDS; g++) {
        let most = 0;
        for (let i = first; i < end; i++) most = Math.max(most, bands[g]![i]!);
        values[(k * STRANDS + g) * SLOTS + s] = most;
      }
    }
  }
  return { values, beatCount };
}

const SLOT_GROUPS = [[0], [6], [3, 9], [4, 8], [2, 10], [1, 11], [5, 7]] as const;

/** Per band: how strong the beat and its divisions are, against the mean of all slots. */
function profileFeatures({ values, beatCount }: SlotStrengths): number[] {
  const features: number[] = [];
  for (let g = 0; g <= BANDS; g++) {
    const means = slotMeans(values, beatCount, g, () => true);
    const level = mean(means) + 1e-3;
    for (const group of SLOT_GROUPS)
      features.push(Math.log2((mean(group.map((s) => means[s]!)) + 0.15 * level) / level));
  }
  return features;
}

function slotMeans(
  values: Float32Array,
  beatCount: number,
  g: number,
  counts: (beat: number) => boolean,
): number[] {
  const sums = Array.from({ length: SLOTS }, () => 0);
  let n = 0;
  for (let k = 0; k < beatCount; k++) {
    if (!counts(k)) continue;
    n++;
    for (let s = 0; s < SLOTS; s++) sums[s]! += values[(k * STRANDS + g) * SLOTS + s]!;
  }
  return sums.map((sum) => sum / Math.max(1, n));
}

/** How every other beat differs, on the beat and halfway, by band; and low against sharp: the back-beat. */
function alternationFeatures({ values, beatCount }: SlotStrengths): number[] {
  const features: number[] = [];
  const onBeat: number[] = [];
  for (let g = 0; g <= BANDS; g++) {
    const even = slotMeans(values, beatCount, g, (k) => k % 2 === 0);
    const odd = slotMeans(values, beatCount, g, (k) => k % 2 === 1);
    const level = 0.5 * (mean(even) + mean(odd)) + 1e-3;
    const difference = (s: number) => (even[s]! - odd[s]!) / (even[s]! + odd[s]! + level);
    onBeat.push(difference(0));
    features.push(Math.abs(difference(0)), Math.abs(difference(6)));
  }
  const [low, body, , sharp] = onBeat;
  return [...features, -low! * sharp! * 4, -low! * body! * 4];
}

/** How alike beats are to the ones so many before: what repeats at the half bar and bar. */
function likenessFeatures({ values, beatCount }: SlotStrengths): number[] {
  const size = STRANDS * SLOTS;
  const used = BANDS * SLOTS;
  return [1, 2, 3, 4, 6, 8].map((lag) => {
    let sum = 0;
    let n = 0;
    for (let k = lag; k < beatCount; k++) {
      const a = values.subarray(k * size, k * size + used);
      const b = values.subarray((k - lag) * size, (k - lag) * size + used);
      sum += cosine(a, b);
      n++;
    }
    return n > 0 ? sum / n : 0.5;
  });
}

/** How many slots of a beat carry an attack, by band. */
function densityFeatures({ values, beatCount }: SlotStrengths): number[] {
  return Array.from({ length: BANDS }, (_, g) => {
    let count = 0;
    for (let k = 0; k < beatCount; k++)
      for (let s = 0; s < SLOTS; s++) {
        const at = (k * STRANDS + g) * SLOTS + s;
        const here = values[at]!;
        if (here < 0.25) continue;
        const left = s > 0 ? values[at - 1]! : 0;
        const right = s + 1 < SLOTS ? values[at + 1]! : 0;
        if (here > left && here >= right) count++;
      }
    const density = Math.log2(0.3 + count / beatCount);
    return [density, density * density];
  }).flat();
}

/** How much the harmony changes on beats against halfway and against all, and every other beat. */
function changeFeatures(beats: readonly number[], { change, evidence }: FitGround): number[] {
  const at = (place: number) => {
    const frame = Math.round((place / evidence.frameRate) * evidence.chromaRate);
    return Math.max(change[frame] ?? 0, change[frame + 1] ?? 0);
  };
  const on = beats.map(at);
  const half = beats.slice(1).map((beat, i) => at((beat + beats[i]!) / 2));
  const all = mean([...change]) + 1e-3;
  const even = mean(on.filter((_, i) => i % 2 === 0));
  const odd = mean(on.filter((_, i) => i % 2 === 1));
  return [
    Math.log2((mean(on) + 0.2 * all) / (mean(half) + 0.2 * all)),
    Math.log2((mean(on) + 0.2 * all) / all),
    Math.abs(even - odd) / (even + odd + 1e-3),
  ];
}

export function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return values.length > 0 ? sum / values.length : 0;
}
