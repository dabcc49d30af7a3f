import {
  endingBar,
  type Hit,
  type Pattern,
  type PatternBeat,
  patternBeats,
  patternSteps,
  type Step,
} from '../../../core/rhythm/pattern.ts';
import type { Source, Stroke } from '../../../core/rhythm/sources.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import type { Scope } from '../../../state/edits/hits.ts';
import type { GridAction } from './gridKeys.ts';
import { type Row, rowKey, rowsOf } from './rowLayout.ts';

/** A place of the grid: a row by its `rowKey`, a step by its number over the whole pattern. */
export type Place = { readonly row: string; readonly column: number };

/** What the grid shows of a pattern: its bars, or its ending as a bar of its own without the band. */
export function shownPattern(pattern: Pattern, scope: Scope): Pattern {
  return (scope === 'ending' && endingBar(pattern)) || pattern;
}

/** The number of a felt beat among all those of the bars that are shown. */
export function beatIndexOf(shown: Pattern, beat: PatternBeat): number {
  return patternBeats(shown).findIndex(({ start }) => start === beat.start);
}

/** The hit that begins on a step, or else the one that lasts over its start; undefined where there is none. */
export function hitOnStep<H extends Hit>(hits: readonly H[], step: Step): H | undefined {
  return (
    hits.find((hit) => hit.at >= step.at && hit.at < step.at + step.length) ??
    hits.find((hit) => hit.at <= step.at && step.at < hit.at + hit.length)
  );
}

/** The strokes of a source nearest to a step, strongest first: those less than half a step from its start. */
export function strokesOnStep(
  strokes: readonly Stroke[],
  step: Step,
  steps: readonly Step[],
): Stroke[] {
  const onThis = ({ at }: Stroke) =>
    steps.reduce((near, s) => (Math.abs(s.at - at) < Math.abs(near.at - at) ? s : near), step)
      .at === step.at;
  return strokes.filter(onThis).toSorted((a, b) => b.strength - a.strength);
}

/** The row of a place; undefined where the pattern no longer has it. */
export function rowAt(pattern: Pattern, place: Place): Row | undefined {
  return rowsOf(pattern.sources).find((row) => rowKey(row) === place.row);
}

/** The place itself, or the nearest that is still in the grid after the pattern has changed. */
export function placeWithin(pattern: Pattern, place: Place): Place {
  const last = patternSteps(pattern).length - 1;
  const column = Math.min(Math.max(place.column, 0), last);
  const row = rowAt(pattern, place) ? place.row : 'right';
  return column === place.column && row === place.row ? place : { row, column };
}

/** First step of the beat that comes `by` beats after the one a step is in. */
function beatColumn(steps: readonly Step[], column: number, by: number): number {
  const heads = steps.flatMap((step, i) => (step.index === 0 ? [i] : []));
  const here = heads.findLastIndex((head) => head <= column);
  return heads[Math.min(Math.max(here + by, 0), heads.length - 1)] ?? column;
}

/** Where the grid's cursor goes from a place; it stops at the edges. In the row of counts it goes from beat to beat. */
export function placeAfter(
  pattern: Pattern,
  from: Place,
  action: Extract<GridAction, { readonly kind: 'go' | 'go-to' }>,
): Place {
  const steps = patternSteps(pattern);
  const rows = rowsOf(pattern.sources).map(rowKey);
  const last = steps.length - 1;
  if (action.kind === 'go-to')
    switch (action.place) {
      case 'row start':
        return { ...from, column: 0 };
      case 'row end':
        return { ...from, column: last };
      case 'grid start':
        return { row: rows[0] ?? from.row, column: 0 };
      case 'grid end':
        return { row: rows.at(-1) ?? from.row, column: last };
    }
  const at = rows.indexOf(from.row) + action.rows;
  const row = rows[Math.min(Math.max(at, 0), rows.length - 1)] ?? from.row;
  const inCounts = row === 'counts' && from.row === 'counts';
  const column = inCounts
    ? beatColumn(steps, from.column, action.columns)
    : Math.min(Math.max(from.column + action.columns, 0), last);
  return { row, column };
}

/** What the cursor stands on: a hit of a hand, or a stroke of the band. */
export type Chosen =
  | { readonly kind: 'hit'; readonly hand: HandName; readonly hit: Hit; readonly column: number }
  | { readonly kind: 'stroke'; readonly source: Source; readonly stroke: Stroke };

/** What stands at a place; undefined where nothing does, and on the counts. `column` is the step the hit begins on. */
export function chosenAt(pattern: Pattern, place: Place): Chosen | undefined {
  const steps = patternSteps(pattern);
  const step = steps[place.column];
  const row = rowAt(pattern, place);
  if (!step || !row || row.kind === 'counts') return undefined;
  if (row.kind === 'source') {
    const stroke = strokesOnStep(row.source.strokes, step, steps)[0];
    return stroke && { kind: 'stroke', source: row.source, stroke };
  }
  const hit = hitOnStep<Hit>(pattern[row.hand], step);
  const column = hit && steps.findLastIndex(({ at }) => at <= hit.at);
  return hit && column !== undefined ? { kind: 'hit', hand: row.hand, hit, column } : undefined;
}
