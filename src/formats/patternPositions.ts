import { commonDivisor } from '../core/rhythm/commonDivisor.ts';
import { beatLengths, beatStarts, type Meter } from '../core/time/meter.ts';
import type { Ticks } from '../core/time/ticks.ts';

/**
 * Names of places inside a beat, in the order in which they are looked for, as shares of the beat.
 * A plain beat is counted `1 e & a` in four and `1 trip let` in three; a dotted one (6/8) `1 & a`.
 */
const PLACES: Readonly<
  Record<'plain' | 'dotted', Readonly<Record<string, readonly [number, number]>>>
> = {
  plain: { '&': [1, 2], e: [1, 4], a: [3, 4], trip: [1, 3], let: [2, 3] },
  dotted: { '&': [1, 3], a: [2, 3] },
};

const POSITION_TEXT = /^(\d+)(?:(&|e|a|trip|let)|\+(\d+)\/(\d+))?$/;

function placesIn(beatTicks: Ticks): Readonly<Record<string, readonly [number, number]>> {
  // A quarter of 480 ticks holds one factor of three; only a dotted value holds two.
  return PLACES[beatTicks % 9 === 0 ? 'dotted' : 'plain'];
}

/**
 * Where in a bar a count stands, in ticks from its downbeat: `3`, `2&`, `4e`, `1trip`, and for any
 * other place the beat and a share of it, `2+5/6`. Beats are felt beats from 1. Undefined where the
 * text is no count, the bar has no such beat or the share is no whole number of ticks.
 */
export function parsePosition(text: string, meter: Meter): Ticks | undefined {
  const match = POSITION_TEXT.exec(text);
  const beat = Number(match?.[1]) - 1;
  const start = beatStarts(meter)[beat];
  const length = beatLengths(meter)[beat];
  if (!match || start === undefined || length === undefined) return undefined;
  const share = match[2]
    ? placesIn(length)[match[2]]
    : ([Number(match[3] ?? 0), Number(match[4] ?? 1)] as const);
  if (!share || share[0] >= share[1]) return undefined;
  const at = start + (length * share[0]) / share[1];
  return Number.isInteger(at) ? at : undefined;
}

/** The count that stands at a tick of a bar, in the form that `parsePosition` reads back. */
export function formatPosition(at: Ticks, meter: Meter): string {
  const beat = beatStarts(meter).findLastIndex((start) => start <= at);
  const offset = at - (beatStarts(meter)[beat] ?? 0);
  const length = beatLengths(meter)[beat];
  if (length === undefined || offset < 0 || offset >= length)
    throw new Error(`no tick ${at} in a bar of ${meter.beats}/${meter.unit}`);
  if (offset === 0) return `${beat + 1}`;
  const named = Object.entries(placesIn(length)).find(([, [n, d]]) => offset * d === length * n);
  return named ? `${beat + 1}${named[0]}` : `${beat + 1}+${formatFraction(offset, length)}`;
}

/** A fraction in lowest terms, `3/8`. */
export function formatFraction(numerator: number, denominator: number): string {
  const common = commonDivisor(numerator, denominator);
  return `${numerator / common}/${denominator / common}`;
}
