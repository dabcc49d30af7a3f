import { beatLengths, beatStarts, type Meter } from '../time/meter.ts';
import { TICKS_PER_WHOLE, type Ticks } from '../time/ticks.ts';
import { type MetricSpan, metricTree } from './metricTree.ts';
import type { Division } from './pattern.ts';
import type { NoteValue, TupletRatio, WrittenLength } from './sheet.ts';
import { takesSwing } from './swing.ts';

/** A stretch of a bar that is written with one value. Ticks count from the bar line. */
export type WrittenSpan = {
  readonly from: Ticks;
  readonly to: Ticks;
  readonly written: WrittenLength;
};

const VALUES: readonly NoteValue[] = [1, 2, 4, 8, 16, 32, 64];

/** The value and dots of a plain length; undefined where one note cannot have it. */
export function plainLength(ticks: Ticks): WrittenLength | undefined {
  const value = VALUES.find((v) => TICKS_PER_WHOLE / v === ticks);
  if (value) return { value, dots: 0 };
  const dotted = VALUES.find((v) => (1.5 * TICKS_PER_WHOLE) / v === ticks);
  return dotted && { value: dotted, dots: 1 };
}

/** A bar as it is written down: its tree of spans, and the tuplet of each beat that is one. */
export type WrittenBar = {
  readonly tree: MetricSpan;
  readonly tuplets: readonly BeatTuplet[];
};

type BeatTuplet = { readonly at: Ticks; readonly end: Ticks; readonly ratio: TupletRatio };

/**
 * How a bar with attacks and ends at these ticks (from its bar line) is written. A beat is divided
 * plainly (a quarter in halves down to 32nds, a dotted quarter in eighths and sixteenths) if that
 * has all that happens in it, otherwise as a triplet, or in a dotted beat as two or four in the
 * time of three.
 */
export function writtenBar(meter: Meter, ticks: readonly Ticks[]): WrittenBar {
  const lengths = beatLengths(meter);
  const beats = beatStarts(meter).map((at, i) => {
    const length = lengths[i]!;
    const inside = ticks.map((tick) => tick - at).filter((tick) => tick > 0 && tick < length);
    return { at, end: at + length, ...beatDivision(length, inside) };
  });
  return {
    tree: metricTree(
      meter,
      beats.map((beat) => beat.division),
    ),
    tuplets: beats.flatMap(({ at, end, ratio }) => (ratio ? [{ at, end, ratio }] : [])),
  };
}

function beatDivision(
  length: Ticks,
  inside: readonly Ticks[],
): { readonly division: Division; readonly ratio?: TupletRatio } {
  const fits = (steps: number) => inside.every((tick) => (tick * steps) % length === 0);
  if (takesSwing(length, 2))
    return fits(8) || !fits(6) ? { division: 8 } : { division: 6, ratio: { actual: 3, normal: 2 } };
  if (inside.length > 0 && fits(2)) return { division: 2, ratio: { actual: 2, normal: 3 } };
  if (fits(6) || !fits(8)) return { division: 6 };
  return { division: 8, ratio: { actual: 4, normal: 3 } };
}

/** The place of the bar's finest step that is nearest to a tick. */
export function nearestStepTick({ tree }: WrittenBar, tick: Ticks): Ticks {
  let span = tree;
  while (span.parts.length > 0)
    span = span.parts.find((part) => tick < part.end) ?? span.parts.at(-1)!;
  return tick - span.at <= span.end - tick ? span.at : span.end;
}

/**
 * The values that a note (or rest) from one tick to another is written with, in order, to be tied.
 * A value may cross a beat or the middle of a bar only where it is usual and the beat stays clear
 * (common practice): spans filled whole; in two equal halves, three quarters from either end or the
 * two inner quarters (♩. ♪, ♪ ♩ ♪); in thirds, two of them, or one and a half from the start of
 * one. Rests are only written where they fill a span.
 */
export function writtenSpans(
  bar: WrittenBar,
  from: Ticks,
  to: Ticks,
  kind: 'note' | 'rest',
): WrittenSpan[] {
  return spansIn(bar.tree, from, to, kind, bar.tuplets);
}

function spansIn(
  span: MetricSpan,
  from: Ticks,
  to: Ticks,
  kind: 'note' | 'rest',
  tuplets: readonly BeatTuplet[],
): WrittenSpan[] {
  const [start, end] = [Math.max(from, span.at), Math.min(to, span.end)];
  if (start >= end) return [];
  const written = lengthWithin(start, end, tuplets);
  if (written && mayStand(span, start, end, kind)) return [{ from: start, to: end, written }];
  // A whole bar of 9/8 has no value of its own: two beats are tied to the third.
  const third = hasEqualParts(span) ? span.parts[2] : undefined;
  const two = third && start === span.at && lengthWithin(start, third.at, tuplets);
  if (third && two && kind === 'note' && end === span.end)
    return [
      { from: start, to: third.at, written: two },
      ...spansIn(third, third.at, end, kind, tuplets),
    ];
  return span.parts.flatMap((part) => spansIn(part, start, end, kind, tuplets));
}

/** How a stretch is written by itself: in a tuplet inside the beat of one, not at all out of one into the next beat. */
function lengthWithin(
  from: Ticks,
  to: Ticks,
  tuplets: readonly BeatTuplet[],
): WrittenLength | undefined {
  const touched = tuplets.filter((beat) => from < beat.end && to > beat.at);
  if (touched.every((beat) => from <= beat.at && to >= beat.end)) return plainLength(to - from);
  const [around, ...others] = touched;
  if (!around || others.length > 0 || from < around.at || to > around.end) return undefined;
  const plain = plainLength(((to - from) * around.ratio.actual) / around.ratio.normal);
  return plain && { ...plain, tuplet: around.ratio };
}

function mayStand(span: MetricSpan, from: Ticks, to: Ticks, kind: 'note' | 'rest'): boolean {
  if (from === span.at && to === span.end) return true;
  if (kind === 'rest' || !hasEqualParts(span)) return false;
  const [start, length] = [from - span.at, to - from];
  const part = (span.end - span.at) / span.parts.length;
  if (span.parts.length === 3)
    return start % part === 0 && (length === 2 * part || length === 1.5 * part);
  if (span.parts[0]!.parts.length === 3) return false;
  const quarter = part / 2;
  return (
    (length === 3 * quarter && start % quarter === 0) || (length === part && start === quarter)
  );
}

function hasEqualParts({ parts }: MetricSpan): boolean {
  const [first] = parts;
  return first !== undefined && parts.every((part) => part.end - part.at === first.end - first.at);
}
