import { err, ok, type Result } from '../result.ts';
import { TICKS_PER_QUARTER, TICKS_PER_WHOLE, type Ticks } from './ticks.ts';

/**
 * A time signature. `beats` over `unit` as written (6 over 8); `groups` sums to `beats`.
 * Over 8 and 16 each group is one felt beat (6/8 = 3+3, 7/8 = 2+2+3); over 2 and 4 each unit is
 * a felt beat and the groups say which of them are stressed (5/4 = 3+2).
 */
export type Meter = {
  readonly beats: number;
  readonly unit: 2 | 4 | 8 | 16;
  readonly groups: readonly number[];
};

export type MeterError =
  | { readonly kind: 'not-a-meter'; readonly text: string }
  | { readonly kind: 'unit'; readonly text: string; readonly unit: number }
  | { readonly kind: 'groups-do-not-add-up'; readonly text: string; readonly beats: number };

const UNITS = [2, 4, 8, 16] as const;

const METER_TEXT = /^(\d+(?:\+\d+)*)\s*\/\s*(\d+)(?:\s*\(?\s*(\d+(?:\+\d+)*)\s*\)?)?$/;

/** Usual stress groups where a bar is not simply grouped in threes or twos (common practice). */
const USUAL_GROUPS: Readonly<Record<string, readonly number[]>> = {
  '2/4': [2],
  '3/4': [3],
  '4/4': [2, 2],
  '5/4': [3, 2],
  '6/4': [3, 3],
  '7/4': [4, 3],
  '2/2': [2],
  '3/2': [3],
  '5/8': [3, 2],
  '7/8': [2, 2, 3],
  '8/8': [3, 3, 2],
  '10/8': [3, 3, 2, 2],
  '11/8': [3, 3, 3, 2],
};

function usualGroups(beats: number, unit: number): readonly number[] {
  const named = USUAL_GROUPS[`${beats}/${unit}`];
  if (named) return named;
  if (beats % 3 === 0) return Array.from({ length: beats / 3 }, () => 3);
  const twos = Array.from({ length: Math.floor(beats / 2) }, () => 2);
  if (beats % 2 === 0) return twos;
  return beats === 1 ? [1] : [...twos.slice(0, -1), 3];
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, n) => total + n, 0);
}

/**
 * Reads `6/8`, `7/8 (2+2+3)` or `2+2+3/8`. Without groups the usual ones are taken: threes where
 * they fit, 2+2 in 4/4, 3+2 in 5/4 and 5/8, 4+3 in 7/4, 2+2+3 in 7/8 (common practice).
 * Units are 2, 4, 8 and 16; 1 to 32 of them to a bar.
 */
export function parseMeter(text: string): Result<Meter, MeterError> {
  const match = METER_TEXT.exec(text.trim());
  if (!match) return err({ kind: 'not-a-meter', text });
  const upper = (match[1] ?? '').split('+').map(Number);
  const beats = sum(upper);
  const unit = UNITS.find((u) => u === Number(match[2]));
  if (beats < 1 || beats > 32) return err({ kind: 'not-a-meter', text });
  if (unit === undefined) return err({ kind: 'unit', text, unit: Number(match[2]) });
  const written = match[3]?.split('+').map(Number) ?? (upper.length > 1 ? upper : undefined);
  const groups = written ?? usualGroups(beats, unit);
  if (sum(groups) !== beats || groups.some((g) => g < 1))
    return err({ kind: 'groups-do-not-add-up', text, beats });
  return ok({ beats, unit, groups });
}

/**
 * The meter as `parseMeter` reads it back, without spaces: `4/4`; unusual groups are written out,
 * `3+2+2/8`, a single unusual one in brackets, `4/4(4)`.
 */
export function formatMeter(meter: Meter): string {
  const usual = usualGroups(meter.beats, meter.unit);
  const isUsual =
    usual.length === meter.groups.length && usual.every((g, i) => g === meter.groups[i]);
  if (isUsual) return `${meter.beats}/${meter.unit}`;
  return meter.groups.length > 1
    ? `${meter.groups.join('+')}/${meter.unit}`
    : `${meter.beats}/${meter.unit}(${meter.beats})`;
}

export function sameMeter(a: Meter, b: Meter): boolean {
  return a === b || formatMeter(a) === formatMeter(b);
}

/** Length of one written unit (the lower figure) in ticks. */
export function unitTicks(meter: Meter): Ticks {
  return TICKS_PER_WHOLE / meter.unit;
}

/** Length of one bar in ticks: 1920 in 4/4, 1440 in 6/8. */
export function barTicks(meter: Meter): Ticks {
  return meter.beats * unitTicks(meter);
}

/** Whether the groups are the felt beats (over 8 and 16) rather than stresses among them. */
export function hasGroupedBeats(meter: Meter): boolean {
  return meter.unit >= 8;
}

/** Lengths of the felt beats of a bar in ticks: 4/4 → 480 ×4; 6/8 → 720 ×2; 7/8 → 480 480 720. */
export function beatLengths(meter: Meter): Ticks[] {
  const unit = unitTicks(meter);
  return hasGroupedBeats(meter)
    ? meter.groups.map((g) => g * unit)
    : Array.from({ length: meter.beats }, () => unit);
}

/** Where the felt beats of a bar start, in ticks from its downbeat. */
export function beatStarts(meter: Meter): Ticks[] {
  let at = 0;
  return beatLengths(meter).map((length) => {
    const start = at;
    at += length;
    return start;
  });
}

/** Where the stress groups of a bar start, in ticks; the first is always 0. */
export function groupStarts(meter: Meter): Ticks[] {
  let at = 0;
  return meter.groups.map((g) => {
    const start = at;
    at += g * unitTicks(meter);
    return start;
  });
}

/**
 * What the tempo counts in this meter, in ticks: the felt beat where all beats are alike (a dotted
 * quarter in 6/8), otherwise a quarter note (7/8, 5/8).
 */
export function tempoBeatTicks(meter: Meter): Ticks {
  const lengths = beatLengths(meter);
  const first = lengths[0] ?? TICKS_PER_QUARTER;
  return lengths.every((l) => l === first) ? first : TICKS_PER_QUARTER;
}
