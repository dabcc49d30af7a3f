import type { PracticeTarget, TakeRecord } from '../core/practice/takeRecord.ts';
import type { HandScore } from '../core/practice/takeScore.ts';
import { type CsvTable, formatCsv } from './csv.ts';

/** What takes are written with: names of what was practised, and how far ahead of UTC the player's clock was then. */
export type TakeTableContext = {
  readonly song: string;
  readonly nameOf: (target: PracticeTarget) => string;
  readonly aheadOfUtcMinutes: (atMs: number) => number;
};

type Row = {
  readonly take: TakeRecord;
  readonly number: number;
  readonly hand: HandScore | undefined;
};

/** A number with a point and at most two decimals; nothing where there is none. */
function figure(value: number | undefined): string {
  return value === undefined ? '' : String(Math.round(value * 100) / 100);
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}

/** A moment on a clock that is so many minutes ahead of UTC, by ISO 8601: 2026-03-09T17:05:30+01:00. */
export function isoMoment(atMs: number, aheadMinutes: number): string {
  const local = new Date(atMs + 60_000 * aheadMinutes).toISOString().slice(0, 19);
  const ahead = Math.abs(aheadMinutes);
  const sign = aheadMinutes < 0 ? '-' : '+';
  return `${local}${sign}${twoDigits(Math.floor(ahead / 60))}:${twoDigits(ahead % 60)}`;
}

/** The columns in their order; docs/practice-table.md says what each holds. */
const COLUMNS: readonly {
  readonly name: string;
  readonly of: (row: Row, context: TakeTableContext) => string;
}[] = [
  { name: 'take', of: ({ number }) => String(number) },
  {
    name: 'started',
    of: ({ take: { atMs } }, { aheadOfUtcMinutes }) => isoMoment(atMs, aheadOfUtcMinutes(atMs)),
  },
  { name: 'song', of: (_, { song }) => song },
  { name: 'kind', of: ({ take }) => take.target.kind },
  { name: 'practised', of: ({ take }, { nameOf }) => nameOf(take.target) },
  { name: 'tempo_bpm', of: ({ take }) => figure(take.bpm) },
  { name: 'level', of: ({ take }) => figure(take.level) },
  { name: 'hands', of: ({ take }) => take.hand },
  { name: 'input', of: ({ take }) => take.sees },
  { name: 'times_through', of: ({ take }) => String(take.passes) },
  { name: 'clean', of: ({ take }) => (take.score.clean ? 'yes' : 'no') },
  { name: 'extra_in_all', of: ({ take: { score } }) => String(score.played - score.matched) },
  { name: 'wrong_notes', of: ({ take }) => figure(take.score.keys?.wrongHits) },
  { name: 'faster_percent', of: ({ take }) => figure(take.score.drift?.fasterPercent) },
  { name: 'gain_percent', of: ({ take }) => figure(take.score.drift?.gainPercent) },
  { name: 'changes_later_ms', of: ({ take }) => figure(take.score.changes?.laterMs) },
  { name: 'hand', of: ({ hand }) => hand?.hand ?? '' },
  { name: 'expected', of: ({ hand }) => figure(hand?.expected) },
  { name: 'hit', of: ({ hand }) => figure(hand?.hits) },
  { name: 'missed', of: ({ hand }) => figure(hand && hand.expected - hand.hits) },
  { name: 'extra', of: ({ hand }) => figure(hand?.extra) },
  { name: 'late_ms', of: ({ hand }) => figure(hand?.meanMs) },
  { name: 'spread_ms', of: ({ hand }) => figure(hand?.spreadMs) },
  { name: 'uneven_ms', of: ({ hand }) => figure(hand?.unevennessMs) },
];

/**
 * Takes as a table, the first one first, one row for each hand that something was expected of (one row
 * without a hand where nothing was), under a row of the columns' names.
 */
export function takeTable(takes: readonly TakeRecord[], context: TakeTableContext): CsvTable {
  const rows = takes
    .toSorted((a, b) => a.atMs - b.atMs)
    .flatMap((take, i): Row[] => {
      const { hands } = take.score;
      const shown = hands.length > 0 ? hands : [undefined];
      return shown.map((hand) => ({ take, number: i + 1, hand }));
    });
  return [
    COLUMNS.map(({ name }) => name),
    ...rows.map((row) => COLUMNS.map((column) => column.of(row, context))),
  ];
}

/** The table of takes as the text of a CSV file. */
export function takesAsCsv(takes: readonly TakeRecord[], context: TakeTableContext): string {
  return formatCsv(takeTable(takes, context));
}
