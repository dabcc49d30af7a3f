import { type Pattern, patternTicks } from '../core/rhythm/pattern.ts';
import { barTicks, beatStarts } from '../core/time/meter.ts';
import type { Ticks } from '../core/time/ticks.ts';
import { type ProjectFault, sameIdFaults } from './projectFault.ts';

type Placed = { readonly at: Ticks; readonly length: Ticks };

/**
 * Faults of hits or strokes that share `end` ticks, one each at the most. The last may be tied over
 * the end, to the first of the next time round.
 */
function placesFaults(items: readonly Placed[], end: Ticks, path: string): ProjectFault[] {
  const roundAgain = end + (items[0]?.at ?? 0);
  const kindOf = ({ at, length }: Placed, next: Placed | undefined) => {
    if (at >= end) return 'outside';
    if (next && next.at <= at) return 'out-of-order';
    return at + length > (next?.at ?? roundAgain) ? 'too-long' : undefined;
  };
  return items.flatMap((item, i) => {
    const kind = kindOf(item, items[i + 1]);
    return kind ? [{ kind, path: `${path}[${i}]` }] : [];
  });
}

/** What in a pattern does not fit together: see `ProjectFault`. `path` is where the pattern stands. */
export function patternFaults(pattern: Pattern, path: string): ProjectFault[] {
  const end = patternTicks(pattern);
  const beats = pattern.bars * beatStarts(pattern.meter).length;
  const { ending, sources } = pattern;
  const bar = barTicks(pattern.meter);
  return [
    ...(pattern.divisions.length === beats
      ? []
      : [{ kind: 'divisions-do-not-fit' as const, path: `${path}.divisions` }]),
    ...sameIdFaults(sources, `${path}.sources`),
    ...sources.flatMap(({ strokes }, i) =>
      placesFaults(strokes, end, `${path}.sources[${i}].strokes`),
    ),
    ...placesFaults(pattern.left, end, `${path}.left`),
    ...placesFaults(pattern.right, end, `${path}.right`),
    ...(ending ? placesFaults(ending.left, bar, `${path}.ending.left`) : []),
    ...(ending ? placesFaults(ending.right, bar, `${path}.ending.right`) : []),
  ];
}
