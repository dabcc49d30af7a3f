import { type Ending, type Pattern, patternTicks } from '../core/rhythm/pattern.ts';
import { barTicks, beatStarts, type Meter } from '../core/time/meter.ts';
import type { Ticks } from '../core/time/ticks.ts';
import { type ProjectFault, sameIdFaults } from './projectFault.ts';

type Placed = { readonly at: Ticks; readonly length: Ticks };

/**
 * Faults of hits or strokes that share `end` ticks, one each at the most. The last may be tied over
 * the end up to `tiedTo`: the first of the next time round, where nothing else is said.
 */
function placesFaults(
  items: readonly Placed[],
  end: Ticks,
  path: string,
  tiedTo: Ticks = end + (items[0]?.at ?? 0),
): ProjectFault[] {
  const kindOf = ({ at, length }: Placed, next: Placed | undefined) => {
    if (at >= end) return 'outside';
    if (next && next.at <= at) return 'out-of-order';
    return at + length > (next?.at ?? tiedTo) ? 'too-long' : undefined;
  };
  return items.flatMap((item, i) => {
    const kind = kindOf(item, items[i + 1]);
    return kind ? [{ kind, path: `${path}[${i}]` }] : [];
  });
}

function endingFaults({ left, right, divisions }: Ending, meter: Meter, path: string) {
  const bar = barTicks(meter);
  const areDivided = divisions === undefined || divisions.length === beatStarts(meter).length;
  return [
    ...(areDivided ? [] : [{ kind: 'divisions-do-not-fit' as const, path: `${path}.divisions` }]),
    ...placesFaults(left, bar, `${path}.left`, 2 * bar),
    ...placesFaults(right, bar, `${path}.right`, 2 * bar),
  ];
}

/** What in a pattern does not fit together: see `ProjectFault`. `path` is where the pattern stands. */
export function patternFaults(pattern: Pattern, path: string): ProjectFault[] {
  const end = patternTicks(pattern);
  const beats = pattern.bars * beatStarts(pattern.meter).length;
  const { ending, sources } = pattern;
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
    ...(ending ? endingFaults(ending, pattern.meter, `${path}.ending`) : []),
  ];
}
