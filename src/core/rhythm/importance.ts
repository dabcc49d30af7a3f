import { barTicks, beatLengths } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { metricTree, stepSpans } from './metricTree.ts';
import type { Hit, Pattern, Touch } from './pattern.ts';
import type { Source } from './sources.ts';

/**
 * What makes a hit matter. `sources` are what the band plays in the same bars; `changes` are the
 * places of the pattern where the chord changes, as far as that is known.
 */
export type ImportanceContext = Pick<Pattern, 'meter' | 'bars' | 'divisions'> & {
  readonly sources?: readonly Source[];
  readonly changes?: readonly Ticks[];
};

/** How many times as much a place counts as one on the next weaker level of the meter. */
const PER_METRIC_LEVEL = 3;
const DEEPEST_LEVEL = 6;

/** What a plain hit counts on its place, and what is added to that (own choice of weights). */
const PLAIN = 4;
const TOUCH: Readonly<Record<Touch, number>> = { ghost: -2, plain: 0, accent: 2 };
const PER_BAND_STROKE = 2;
const MOST_FROM_BAND = 4;
const CHORD_CHANGE = 8;
const BASS_ROOT = 1;

/**
 * How much a hit matters, a whole number above 0. A place in the meter counts three times as much
 * as one a level weaker, so that no two weak hits outweigh a strong one. On its place a plain hit
 * counts 4, an accent 2 more, a ghost 2 less; 2 more for each stroke of the band there (by its
 * strength and presence, 4 at the most), 8 more where the chord changes or is anticipated, 1 more
 * for the root in the bass.
 */
export function importanceOf(hit: Hit, context: ImportanceContext): number {
  return weighing(context)(hit);
}

/** `importanceOf` for many hits of one pattern. */
export function weighing(context: ImportanceContext): (hit: Hit) => number {
  const weightAt = metricPlaces(context);
  return (hit) => {
    const band = Math.min(MOST_FROM_BAND, PER_BAND_STROKE * bandAt(hit.at, context.sources ?? []));
    const changes = hit.anticipates === true || context.changes?.includes(hit.at) === true;
    const isRoot = hit.play.some((tone) => tone === 'root');
    const counts =
      PLAIN +
      TOUCH[hit.touch] +
      Math.round(band) +
      (changes ? CHORD_CHANGE : 0) +
      (isRoot ? BASS_ROOT : 0);
    return PER_METRIC_LEVEL ** (DEEPEST_LEVEL + weightAt(hit.at)) * counts;
  };
}

/** The metric weight of a place: of its step, or one level under the weakest step where it stands on none. */
function metricPlaces({ meter, bars, divisions }: ImportanceContext): (at: Ticks) => number {
  const beats = beatLengths(meter).length;
  const steps = Array.from({ length: bars }, (_, bar) => {
    const inBar = divisions.slice(bar * beats, (bar + 1) * beats);
    return stepSpans(metricTree(meter, inBar)).map(
      ({ at, weight }) => [at + bar * barTicks(meter), weight] as const,
    );
  }).flat();
  const weights = new Map(steps);
  const weakest = Math.min(...weights.values());
  return (at) => Math.max(-DEEPEST_LEVEL, weights.get(at) ?? weakest - 1);
}

function bandAt(at: Ticks, sources: readonly Source[]): number {
  return sources
    .flatMap((source) => source.strokes)
    .filter((stroke) => stroke.at === at)
    .reduce((sum, stroke) => sum + stroke.strength * stroke.presence, 0);
}
