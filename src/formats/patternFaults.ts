import { type Pattern, patternTicks } from '../core/rhythm/pattern.ts';
import { barTicks, beatStarts } from '../core/time/meter.ts';
import type { Ticks } from '../core/time/ticks.ts';
import { type ProjectFault, sameIdFaults } from './projectFault.ts';

type Placed = { readonly at: Ticks; readonly length: Ticks };

function placeFault(
  item: Placed,
  next: Placed | undefined,
  end: Ticks,
): ProjectFault['kind'] | undefined {
  if (item.at >= end) return 'outside';
  if (next && next.at <= item.at) return 'out-of-order';
  return item.at + item.length > (next?.at ?? end) ? 'too-long' : undefined;
}

/** Faults of hits or strokes that share `end` ticks, one a hit at the most. */
function placesFaults(items: readonly Placed[], end: Ticks, path: string): ProjectFault[] {
  return items.flatMap((item, i) => {
    const kind = placeFault(item, items[i + 1], end);
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
