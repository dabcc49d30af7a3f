import { beatLengths } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { DIVISIONS, type Division, type Pattern, patternBeats, patternTicks } from './pattern.ts';

type Placed = { readonly at: Ticks; readonly length: Ticks };

/**
 * Half time: everything takes twice as long, in twice as many bars, sources too. Each beat's
 * division holds for the two beats it becomes (by their order, where beats are unequal). The ending
 * stays as it is, one bar.
 */
export function doubleNoteValues(pattern: Pattern): Pattern {
  const beats = beatLengths(pattern.meter).length;
  const divisions = Array.from(
    { length: 2 * pattern.bars * beats },
    (_, beat) => pattern.divisions[Math.floor(beat / 2)] ?? 1,
  );
  return { ...scaled(pattern, (tick) => 2 * tick), bars: 2 * pattern.bars, divisions };
}

/**
 * Double time: everything takes half as long, in half as many bars, sources too; a pattern of an
 * odd number of bars is played twice for it. Two beats become one, divided as coarsely as holds
 * their divisions and all that stands in them. Halving after doubling gives the same pattern, as
 * long as its hits stand on its steps. The ending stays as it is. Positions round to whole ticks.
 */
export function halveNoteValues(pattern: Pattern): Pattern {
  const whole = pattern.bars % 2 === 0 ? pattern : playedTwice(pattern);
  const halved = { ...scaled(whole, (tick) => Math.round(tick / 2)), bars: whole.bars / 2 };
  const ticks = [...halved.left, ...halved.right, ...halved.sources.flatMap((s) => s.strokes)].map(
    ({ at }) => at,
  );
  const divisions = patternBeats({ ...halved, divisions: [] }).map((beat, i) => {
    const inside = ticks.filter((at) => at >= beat.start && at < beat.start + beat.length);
    const offsets = inside.map((at) => (at - beat.start) / beat.length);
    return joinedDivision(whole.divisions[2 * i] ?? 1, whole.divisions[2 * i + 1] ?? 1, offsets);
  });
  return { ...halved, divisions };
}

/** The division of two beats joined to one, whose events stand at these shares of it. */
function joinedDivision(a: Division, b: Division, offsets: readonly number[]): Division {
  const holding = DIVISIONS.filter((division) => division % a === 0 && division % b === 0);
  const fitting = holding.find((division) =>
    offsets.every((offset) => Number.isInteger(Math.round(offset * division * 1e6) / 1e6)),
  );
  return fitting ?? holding[0] ?? 8;
}

function playedTwice(pattern: Pattern): Pattern {
  const end = patternTicks(pattern);
  const twice = <P extends Placed>(placed: readonly P[]): P[] => [
    ...placed,
    ...placed.map((event) => ({ ...event, at: event.at + end })),
  ];
  return {
    ...pattern,
    bars: 2 * pattern.bars,
    divisions: [...pattern.divisions, ...pattern.divisions],
    left: twice(pattern.left),
    right: twice(pattern.right),
    sources: pattern.sources.map((source) => ({ ...source, strokes: twice(source.strokes) })),
  };
}

function scaled(pattern: Pattern, scale: (tick: Ticks) => Ticks): Pattern {
  const all = <P extends Placed>(placed: readonly P[]): P[] =>
    placed.map((event) => ({
      ...event,
      at: scale(event.at),
      length: Math.max(1, scale(event.length)),
    }));
  return {
    ...pattern,
    left: all(pattern.left),
    right: all(pattern.right),
    sources: pattern.sources.map((source) => ({ ...source, strokes: all(source.strokes) })),
  };
}
