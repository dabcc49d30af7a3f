import { barTicks, beatLengths, type Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';
import { type MetricSpan, metricTree, stepSpans } from './metricTree.ts';
import type { Division, Hands, Pattern } from './pattern.ts';
import type { Source } from './sources.ts';

type Grid = Pick<Pattern, 'meter' | 'bars' | 'divisions'>;

type Attack = { readonly at: Ticks };

/**
 * How strong each step of a bar is: 0 for the downbeat, −1, −2 … the deeper the level of the meter
 * at which the step first appears (Longuet-Higgins & Lee 1984). In 4/4 eighths 0 −3 −2 −3 −1 −3 −2
 * −3; in 6/8 0 −2 −2 −1 −2 −2. `divisions`: steps of each felt beat, or one number for all.
 */
export function metricWeights(meter: Meter, divisions: Division | readonly Division[]): number[] {
  const perBeat =
    typeof divisions === 'number' ? beatLengths(meter).map(() => divisions) : divisions;
  return stepSpans(metricTree(meter, perBeat)).map((step) => step.weight);
}

/**
 * How syncopated attacks are, by Longuet-Higgins & Lee 1984: the bar is divided only as far as its
 * attacks ask for, and every rest or held-over span that is stronger than an attack before it adds
 * the difference of their weights. 0 where nothing is syncopated; the sum over all bars.
 * Each bar also answers to the last attack of the bar before; `cycle` has the last bar come before
 * the first, `once` has nothing before it.
 */
export function syncopation(
  attacks: readonly Attack[],
  grid: Grid,
  course: 'cycle' | 'once' = 'cycle',
): number {
  const bars = Array.from({ length: grid.bars }, (_, bar) => events(attacks, grid, bar));
  return bars.reduce((total, bar, i) => {
    const before = i > 0 || course === 'cycle' ? bars.at(i - 1) : undefined;
    const last = before?.findLast((event) => event.sounds);
    return total + syncopationOfBar(last ? [last, ...bar] : bar);
  }, 0);
}

/** A span that is not divided further: struck at its start, or silent. */
type MetricEvent = { readonly sounds: boolean; readonly weight: number };

function events(attacks: readonly Attack[], grid: Grid, bar: number): MetricEvent[] {
  const length = barTicks(grid.meter);
  const beats = beatLengths(grid.meter).length;
  const divisions = grid.divisions.slice(bar * beats, (bar + 1) * beats);
  const ticks = attacks.map(({ at }) => at - bar * length);
  return eventsIn(metricTree(grid.meter, divisions), ticks);
}

function eventsIn(span: MetricSpan, ticks: readonly Ticks[]): MetricEvent[] {
  const inside = ticks.filter((tick) => tick >= span.at && tick < span.end);
  const isWhole = inside.every((tick) => tick === span.at) || span.parts.length === 0;
  if (isWhole) return [{ sounds: inside.length > 0, weight: span.weight }];
  return span.parts.flatMap((part) => eventsIn(part, inside));
}

function syncopationOfBar(bar: readonly MetricEvent[]): number {
  return bar.reduce((total, { sounds, weight }, i) => {
    if (sounds) return total;
    const struck = bar.slice(0, i).findLast((event) => event.sounds && event.weight <= weight);
    return struck ? total + weight - struck.weight : total;
  }, 0);
}

/** A stroke that no hand carries; `weight` is its strength times its presence. */
export type Gap = { readonly sourceId: string; readonly at: Ticks; readonly weight: number };

/**
 * How much of the band the hands carry. `share` 0 to 1 is the weight of the strokes (strength times
 * presence) at whose tick a hand strikes, out of the weight of all, 1 where there are none;
 * `shares` the same for each source; `gaps` are the other strokes, heaviest first.
 */
export type Coverage = {
  readonly share: number;
  readonly shares: Readonly<Record<string, number>>;
  readonly gaps: readonly Gap[];
};

/** See `Coverage`. A stroke counts as carried by either hand, whatever the hand plays there. */
export function coverage(sources: readonly Source[], hands: Hands): Coverage {
  const struck = new Set([...hands.left, ...hands.right].map((hit) => hit.at));
  const strokes = sources.flatMap((source) =>
    source.strokes.map((stroke) => ({
      sourceId: source.id,
      at: stroke.at,
      weight: stroke.strength * stroke.presence,
    })),
  );
  const share = (of: readonly Gap[]): number => {
    const all = weightOf(of);
    return all > 0 ? weightOf(of.filter((stroke) => struck.has(stroke.at))) / all : 1;
  };
  return {
    share: share(strokes),
    shares: Object.fromEntries(
      sources.map(({ id }) => [id, share(strokes.filter((stroke) => stroke.sourceId === id))]),
    ),
    gaps: strokes
      .filter((stroke) => !struck.has(stroke.at) && stroke.weight > 0)
      .toSorted((a, b) => b.weight - a.weight || a.at - b.at),
  };
}

function weightOf(strokes: readonly Gap[]): number {
  return strokes.reduce((sum, stroke) => sum + stroke.weight, 0);
}

/** Attacks to a felt beat, on average over the whole grid. */
export function density(attacks: readonly Attack[], grid: Pick<Grid, 'meter' | 'bars'>): number {
  return attacks.length / (grid.bars * beatLengths(grid.meter).length);
}

/** The hand that strikes more often; `both` where they strike equally often. */
export function leadingHand(hands: Hands): HandName | 'both' {
  const difference = hands.left.length - hands.right.length;
  if (difference === 0) return 'both';
  return difference > 0 ? 'left' : 'right';
}
