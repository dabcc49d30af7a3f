import { unreachable } from '../../../core/result.ts';
import type { Source, SourcePart } from '../../../core/rhythm/sources.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import { PART_NAMES } from '../pattern/sourceNames.ts';
import type { Pixels } from './systemLayout.ts';

/** A row of the grid: a hand, the spoken counts between the hands, or one source of the band. */
export type Row =
  | { readonly kind: 'hand'; readonly hand: HandName }
  | { readonly kind: 'counts' }
  | { readonly kind: 'source'; readonly source: Source };

/** A row where it stands in a system, `top` from the system's upper edge. */
export type PlacedRow = { readonly row: Row; readonly top: Pixels; readonly height: Pixels };

/** The rows of one system from the top down. */
export type RowLayout = { readonly rows: readonly PlacedRow[]; readonly height: Pixels };

/** Sources outside the right hand, outermost first; the low ones lie outside the left hand, nearest first. */
const ABOVE: readonly SourcePart[] = [
  'percussion',
  'cymbal',
  'tom',
  'hi-hat',
  'snare',
  'sung',
  'strumming',
  'picking',
];
const BELOW: readonly SourcePart[] = ['bass', 'kick'];

function ofParts(sources: readonly Source[], parts: readonly SourcePart[]): Row[] {
  return parts.flatMap((part) =>
    sources
      .filter((source) => source.part === part)
      .map((source) => ({ kind: 'source' as const, source })),
  );
}

/** The rows of a pattern's grid from the top down: faint sources, right hand, counts, left hand, faint sources. */
export function rowsOf(sources: readonly Source[]): Row[] {
  return [
    ...ofParts(sources, ABOVE),
    { kind: 'hand', hand: 'right' },
    { kind: 'counts' },
    { kind: 'hand', hand: 'left' },
    ...ofParts(sources, BELOW),
  ];
}

/** The hand that a source lies beside. */
export function handBeside(part: SourcePart): HandName {
  return BELOW.includes(part) ? 'left' : 'right';
}

/** A name for a row that is the same after every edit. */
export function rowKey(row: Row): string {
  switch (row.kind) {
    case 'hand':
      return row.hand;
    case 'counts':
      return 'counts';
    case 'source':
      return `source ${row.source.id}`;
    default:
      return unreachable(row);
  }
}

const HAND_NAMES = { right: 'Right hand', left: 'Left hand' } as const;

/** What a row is called on the page. */
export function rowName(row: Row): string {
  if (row.kind === 'hand') return HAND_NAMES[row.hand];
  return row.kind === 'source' ? PART_NAMES[row.source.part] : 'Count';
}

/** Least and greatest height of a row. A hand's has room for accent marks above its strokes. */
const HEIGHTS = {
  right: [92, 190],
  left: [82, 160],
  counts: [46, 68],
  source: [18, 24],
} as const;

/** Room above a hand's strokes for accent marks. */
export const MARK_ROOM: Pixels = 18;

function heightRange(row: Row): readonly [number, number] {
  return HEIGHTS[row.kind === 'hand' ? row.hand : row.kind];
}

/** The least height that a system of these rows can have. */
export function leastHeight(rows: readonly Row[]): Pixels {
  return rows.reduce((sum, row) => sum + heightRange(row)[0], 0);
}

/**
 * The rows in a system of about `budget` pixels: each between its least and greatest height, all
 * in the same proportion. The height is more than the budget where even the least rows need more.
 */
export function rowLayout(rows: readonly Row[], budget: Pixels): RowLayout {
  const least = leastHeight(rows);
  const most = rows.reduce((sum, row) => sum + heightRange(row)[1], 0);
  const share = Math.min(Math.max((budget - least) / (most - least), 0), 1);
  let top = 0;
  const placed = rows.map((row): PlacedRow => {
    const [low, high] = heightRange(row);
    const height = Math.round(low + share * (high - low));
    top += height;
    return { row, top: top - height, height };
  });
  return { rows: placed, height: top };
}
