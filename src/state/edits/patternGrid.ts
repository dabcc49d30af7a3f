import {
  type Division,
  endingBar,
  type Hands,
  type Hit,
  type Pattern,
  type PatternBeat,
  patternBeats,
  patternTicks,
  withEndingGridOf,
} from '../../core/rhythm/pattern.ts';
import { barTicks, beatLengths, beatStarts, type Meter } from '../../core/time/meter.ts';
import type { Ticks } from '../../core/time/ticks.ts';
import { settledEnding, settledHands, settledSources } from './settle.ts';

type Placed = { readonly at: Ticks; readonly length: Ticks };

/** Hits and strokes of a pattern after the same change of each; hands and sources are settled to `pattern`'s length. */
function withPlaced(
  pattern: Pattern,
  inBars: <T extends Placed>(items: readonly T[]) => readonly T[],
  inEnding: <T extends Placed>(items: readonly T[]) => readonly T[],
): Pattern {
  const end = patternTicks(pattern);
  const { ending } = pattern;
  const sources = pattern.sources.map((s) => ({ ...s, strokes: inBars(s.strokes) }));
  const changedEnding = ending && {
    ...ending,
    left: inEnding(ending.left),
    right: inEnding(ending.right),
  };
  return {
    ...pattern,
    ...settledHands({ left: inBars(pattern.left), right: inBars(pattern.right) }, end),
    sources: settledSources(sources, end),
    ...(changedEnding ? { ending: settledEnding(changedEnding, pattern.meter) } : {}),
  };
}

/** Where the steps of a beat start, and its end. */
function boundaries(beat: PatternBeat): Ticks[] {
  return Array.from(
    { length: beat.division + 1 },
    (_, i) => beat.start + Math.round((i * beat.length) / beat.division),
  );
}

/** The nearest of the ascending places; the later of two that are as near, as an off-beat eighth becomes a triplet's last. */
function nearest(tick: Ticks, places: readonly Ticks[]): Ticks {
  const near = Math.min(...places.map((place) => Math.abs(place - tick)));
  return places.findLast((place) => Math.abs(place - tick) === near) ?? tick;
}

/** A hit on the steps of a beat, as far as it starts or ends inside that beat. */
function onGrid<H extends Hit>(hit: H, beat: PatternBeat): H {
  const places = boundaries(beat);
  const isInside = (tick: Ticks) => tick >= beat.start && tick < beat.start + beat.length;
  const at = isInside(hit.at) ? nearest(hit.at, places.slice(0, -1)) : hit.at;
  const end = hit.at + hit.length;
  const endPlaces = places.filter((place) => place > at);
  const movedEnd = isInside(end) || end <= at ? nearest(end, endPlaces) : end;
  return { ...hit, at, length: movedEnd - at };
}

function handsOnGrid({ left, right }: Hands, beat: PatternBeat): Hands {
  return { left: left.map((h) => onGrid(h, beat)), right: right.map((h) => onGrid(h, beat)) };
}

/**
 * The pattern with another division of one felt beat (0-based over all its bars). Hits that start or
 * end off the new steps move to the nearest step of the beat; where two meet they become one. An
 * ending without divisions of its own follows the last bar. The band's strokes stay: they are what
 * was played.
 */
export function withDivision(pattern: Pattern, beatIndex: number, division: Division): Pattern {
  const beats = patternBeats(pattern);
  const old = beats[beatIndex];
  if (!old || old.division === division) return pattern;
  const beat = { ...old, division };
  const inEnding = { ...beat, start: beat.start - beat.bar * barTicks(pattern.meter) };
  const { ending } = pattern;
  const follows = ending && !ending.divisions && beat.bar === pattern.bars - 1;
  return {
    ...pattern,
    divisions: beats.map((b, i) => (i === beatIndex ? division : b.division)),
    ...settledHands(handsOnGrid(pattern, beat), patternTicks(pattern)),
    ...(follows ? { ending: settledEnding(handsOnGrid(ending, inEnding), pattern.meter) } : {}),
  };
}

/** The pattern with another division of one felt beat of its ending (see `withDivision`), which is from then on divided on its own. */
export function withEndingDivision(
  pattern: Pattern,
  beatIndex: number,
  division: Division,
): Pattern {
  const bar = endingBar(pattern);
  const old = bar && patternBeats(bar)[beatIndex];
  if (!bar || !old || old.division === division) return pattern;
  const hands = handsOnGrid(bar, { ...old, division });
  const divisions = bar.divisions.with(beatIndex, division);
  return { ...pattern, ending: settledEnding({ ...hands, divisions }, pattern.meter) };
}

/** The pattern in so many bars: more repeat those it has from the first, fewer cut off the last. The ending stays. */
export function withBars(pattern: Pattern, bars: number): Pattern {
  const length = patternTicks(pattern);
  const rounds = Math.ceil(bars / pattern.bars);
  const divisions = patternBeats(pattern).map((beat) => beat.division);
  const beats = (divisions.length / pattern.bars) * bars;
  const repeated = <T extends Placed>(items: readonly T[]): T[] =>
    Array.from({ length: rounds }, (_, round) =>
      items.map((item) => ({ ...item, at: item.at + round * length })),
    ).flat();
  const changed = withPlaced(
    {
      ...pattern,
      bars,
      divisions: Array.from({ length: beats }, (_, i) => divisions[i % divisions.length] ?? 1),
    },
    repeated,
    (items) => items,
  );
  return withEndingGridOf(pattern, changed);
}

/** Where a place in bars of one meter lies in those of another: the same beat, as far into it; undefined in a beat that is gone. */
function inOtherMeter(tick: Ticks, from: Meter, to: Meter): Ticks | undefined {
  const bar = Math.floor(tick / barTicks(from));
  const inBar = tick - bar * barTicks(from);
  const beat = beatStarts(from).findLastIndex((start) => start <= inBar);
  const intoBeat = (inBar - beatStarts(from)[beat]!) / beatLengths(from)[beat]!;
  const start = beatStarts(to)[beat];
  const length = beatLengths(to)[beat];
  if (start === undefined || length === undefined) return undefined;
  return bar * barTicks(to) + start + Math.round(intoBeat * length);
}

/**
 * The pattern in another meter: every felt beat keeps its division and what is played in it, as far
 * into the beat as before; what lasts to the end of a bar still does. Beats the new bar does not have
 * are cut off; in beats it adds, divided as the last one, nothing begins.
 */
export function withPatternMeter(pattern: Pattern, meter: Meter): Pattern {
  const from = pattern.meter;
  const refitted = (inBar: readonly PatternBeat[]) =>
    beatStarts(meter).map((_start, i) => (inBar[i] ?? inBar.at(-1))?.division ?? 1);
  const divisions = Array.from({ length: pattern.bars }, (_, bar) =>
    refitted(patternBeats(pattern).filter((beat) => beat.bar === bar)),
  ).flat();
  const { ending } = pattern;
  const inMeter = {
    ...pattern,
    meter,
    divisions,
    ...(ending?.divisions
      ? { ending: { ...ending, divisions: refitted(patternBeats(endingBar(pattern) ?? pattern)) } }
      : {}),
  };
  const moved = <T extends Placed>(items: readonly T[]): T[] =>
    items.flatMap((item) => {
      const at = inOtherMeter(item.at, from, meter);
      if (at === undefined) return [];
      const barEnd = (Math.floor(at / barTicks(meter)) + 1) * barTicks(meter);
      const end = inOtherMeter(item.at + item.length, from, meter) ?? barEnd;
      return [{ ...item, at, length: Math.max(end - at, 1) }];
    });
  return withPlaced(inMeter, moved, moved);
}
