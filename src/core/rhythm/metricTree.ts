import { barTicks, beatStarts, hasGroupedBeats, type Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { Division } from './pattern.ts';

/**
 * A span of a bar and what it divides into. `weight` is that of its start: 0 for the bar, and for
 * every later part of a division minus the level at which it first appears; a first part has the
 * weight of the whole. Steps have no parts.
 */
export type MetricSpan = {
  readonly at: Ticks;
  readonly end: Ticks;
  readonly weight: number;
  readonly parts: readonly MetricSpan[];
};

/** Into what the steps of a beat are gathered: sextuplets are thirds that are halved. */
const STEP_FACTORS: Readonly<Record<Division, readonly number[]>> = {
  1: [],
  2: [2],
  3: [3],
  4: [2, 2],
  6: [3, 2],
  8: [2, 2, 2],
};

/** The spans of a division before they have places: how many lie in each, one inside the other. */
type Nest = { readonly size: number; readonly parts: readonly Nest[] };

const SINGLE: Nest = { size: 1, parts: [] };

function evenly(factors: readonly number[]): Nest {
  const [first, ...rest] = factors;
  if (first === undefined) return SINGLE;
  const part = evenly(rest);
  return { size: first * part.size, parts: Array.from({ length: first }, () => part) };
}

/** The prime factors of a number, smallest first; none for 1. */
function factorsOf(n: number): number[] {
  for (let p = 2; p <= n; p++) if (n % p === 0) return [p, ...factorsOf(n / p)];
  return [];
}

/** How the felt beats of a bar are gathered: by the meter's stress groups, otherwise in twos and threes. */
function beatNest(meter: Meter): Nest {
  if (hasGroupedBeats(meter)) return evenly(factorsOf(meter.groups.length));
  const groups = meter.groups.map((beats) => evenly(factorsOf(beats)));
  return groups.length === 1 ? groups[0]! : { size: meter.beats, parts: groups };
}

function depthOf(nest: Nest): number {
  return nest.parts.length === 0 ? 0 : 1 + Math.max(...nest.parts.map(depthOf));
}

/**
 * The bar of a meter as a tree of spans: stress groups, felt beats, steps. `divisions` has one entry
 * per felt beat (a missing one counts as 1). All steps of a level lie deeper than every beat.
 */
export function metricTree(meter: Meter, divisions: readonly Division[]): MetricSpan {
  const beats = beatNest(meter);
  const edges = [...beatStarts(meter), barTicks(meter)];
  const stepLevel = depthOf(beats) + 1;
  const beatSpan = (beat: number, weight: number): MetricSpan => {
    const [at, end] = [edges[beat]!, edges[beat + 1]!];
    const nest = evenly(STEP_FACTORS[divisions[beat] ?? 1]);
    const edge = (step: number) => at + Math.round((step * (end - at)) / nest.size);
    return spanOf(nest, 0, weight, stepLevel, (step, stepWeight) => ({
      at: edge(step),
      end: edge(step + 1),
      weight: stepWeight,
      parts: [],
    }));
  };
  return spanOf(beats, 0, 0, 1, beatSpan);
}

function spanOf(
  nest: Nest,
  first: number,
  weight: number,
  level: number,
  leaf: (index: number, weight: number) => MetricSpan,
): MetricSpan {
  if (nest.parts.length === 0) return leaf(first, weight);
  let from = first;
  const parts = nest.parts.map((part, i) => {
    const span = spanOf(part, from, i === 0 ? weight : -level, level + 1, leaf);
    from += part.size;
    return span;
  });
  return { at: parts[0]!.at, end: parts.at(-1)!.end, weight, parts };
}

/** The steps of a tree in order: its spans without parts. */
export function stepSpans(span: MetricSpan): MetricSpan[] {
  return span.parts.length === 0 ? [span] : span.parts.flatMap(stepSpans);
}
