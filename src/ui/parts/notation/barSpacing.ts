import type { Ticks } from '../../../core/time/ticks.ts';
import { barColumns, barEndTick, type Column } from './columns.ts';
import { headWidth, type Units } from './glyphs.ts';
import { textWidth } from './lettering.ts';
import type { Notation } from './notation.ts';
import type { EngravedBar } from './writtenBars.ts';

/** The least distance between two of a bar's points, which are its columns and, last, its end. */
type Rod = { readonly from: number; readonly to: number; readonly least: Units };

/**
 * The notes of a bar as they can be spaced: springs between neighbouring points, longer for longer
 * values, and rods that keep ink apart. `leadIn` is the rigid way from the bar line to the first column.
 */
export type BarSpacing = {
  readonly columns: readonly Column[];
  readonly leadIn: Units;
  readonly springs: readonly Units[];
  readonly rods: readonly Rod[];
};

/** Between a bar line and ink on either side. */
const LINE_ROOM: Units = 11;

const INK_GAP: Units = 5;
const COUNT_GAP: Units = 6;
const CHORD_GAP: Units = 12;

/** Natural distance of two quarters; that of other values grows with this power of their length (our own choice). */
const QUARTER: Units = 46;
const POWER = 0.58;

function spring(ticks: Ticks): Units {
  return QUARTER * (ticks / 480) ** POWER;
}

/** The springs and rods of a bar. */
export function barSpacing(written: EngravedBar, kind: Notation['kind']): BarSpacing {
  const columns = barColumns(written, kind);
  const ticks = [...columns.map(({ tick }) => tick), barEndTick(written)];
  return {
    columns,
    leadIn: LINE_ROOM + leadInk(columns[0]!),
    springs: columns.map(({ tick }, i) => spring(ticks[i + 1]! - tick)),
    rods: [...inkRods(columns), ...countRods(columns), ...chordRods(columns)],
  };
}

/** What reaches to the left of the first column: accidentals, or half its count where that is wider than a head. */
function leadInk({ left, count }: Column): Units {
  return Math.max(left, count ? countReach(count.text) - COUNT_CENTRE - 4 : 0);
}

/** Counts stand under the middle of a black note head. */
export const COUNT_CENTRE: Units = headWidth(4) / 2;

function countReach(text: string): Units {
  return textWidth(text, 'count') / 2;
}

function inkRods(columns: readonly Column[]): Rod[] {
  return columns.map(({ right }, i) => {
    const next = columns[i + 1];
    return { from: i, to: i + 1, least: right + (next ? next.left + INK_GAP : LINE_ROOM) };
  });
}

function countRods(columns: readonly Column[]): Rod[] {
  const counted = columns.flatMap(({ count }, i) => (count ? [{ i, text: count.text }] : []));
  return counted.map(({ i, text }, n) => {
    const next = counted[n + 1];
    return next
      ? { from: i, to: next.i, least: countReach(text) + countReach(next.text) + COUNT_GAP }
      : { from: i, to: columns.length, least: COUNT_CENTRE + countReach(text) + COUNT_GAP };
  });
}

function chordRods(columns: readonly Column[]): Rod[] {
  const named = columns.flatMap(({ chord }, i) => (chord ? [{ i, width: chord.width }] : []));
  return named.map(({ i, width }, n) => ({
    from: i,
    to: named[n + 1]?.i ?? columns.length,
    least: width + CHORD_GAP,
  }));
}

/**
 * Places of a bar's columns and, last, of its end, from the first column at 0: every spring
 * stretched by the same factor, and never shorter than the rods allow.
 */
export function stretched({ springs, rods }: BarSpacing, factor: number): Units[] {
  const places: Units[] = [0];
  for (const [i, length] of springs.entries()) {
    const held = rods
      .filter(({ to }) => to === i + 1)
      .map(({ from, least }) => places[from]! + least);
    places.push(Math.max(places[i]! + length * factor, ...held));
  }
  return places;
}
