import { barTicks } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { type Ending, type Hit, lastBarDivisions, type Pattern, patternTicks } from './pattern.ts';

/** A phrase of so many bars at least is heard before a fill, if the pattern is not longer. */
const PHRASE_BARS = 4;

/**
 * A pattern with an ending, to be heard round and round: its bars, repeated to a phrase of four if
 * they are fewer, the last of them the ending. It has no ending of its own; the band goes on.
 */
export function endingPhrase(pattern: Pattern, ending: Ending): Pattern {
  const { ending: _ending, ...main } = pattern;
  const rounds = Math.max(1, Math.ceil(PHRASE_BARS / pattern.bars));
  const length = patternTicks(pattern);
  const bars = rounds * pattern.bars;
  const lastStart = (bars - 1) * barTicks(pattern.meter);
  const repeated = <T extends { readonly at: Ticks }>(items: readonly T[]): T[] =>
    Array.from({ length: rounds }, (_, i) =>
      items.map((item) => ({ ...item, at: item.at + i * length })),
    ).flat();
  const ended = <H extends Hit>(hits: readonly H[], inEnding: readonly H[]): H[] => {
    const last = inEnding.map((hit) => ({ ...hit, at: hit.at + lastStart }));
    const before = repeated(hits).filter(({ at }) => at < lastStart);
    return cutToNext([...before, ...last], bars * barTicks(pattern.meter));
  };
  const divisions = Array.from({ length: rounds }, () => pattern.divisions).flat();
  const lastDivisions = ending.divisions ?? lastBarDivisions(pattern);
  return {
    ...main,
    bars,
    divisions: [...divisions.slice(0, -lastDivisions.length), ...lastDivisions],
    left: ended(pattern.left, ending.left),
    right: ended(pattern.right, ending.right),
    sources: pattern.sources.map((source) => ({ ...source, strokes: repeated(source.strokes) })),
  };
}

/** Hits none of which lasts beyond the next, the last not beyond the first of the next time round. */
function cutToNext<H extends Hit>(hits: readonly H[], end: Ticks): H[] {
  const again = end + (hits[0]?.at ?? 0);
  return hits.map((hit, i) => {
    const room = (hits[i + 1]?.at ?? again) - hit.at;
    return hit.length > room ? { ...hit, length: room } : hit;
  });
}
