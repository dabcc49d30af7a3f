import { ok, type Result } from '../result.ts';
import { beatLengths, hasGroupedBeats, type Meter, unitTicks } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { type CountStyle, STEP_NAMES } from './countNames.ts';
import { type CountsError, countTokens } from './countTokens.ts';
import {
  type Division,
  type Pattern,
  type PatternBeat,
  patternBeats,
  patternSteps,
  type Step,
} from './pattern.ts';
import { saidBeats, soundingSteps } from './saidBeats.ts';

/** What counting needs of a pattern. */
export type CountGrid = Pick<Pattern, 'meter' | 'bars' | 'divisions'>;

/** Attacks that were said: their ticks from the start of the first bar, and the grid they stand on. */
export type SaidCounts = CountGrid & { readonly at: readonly Ticks[] };

/** How many units (eighths in 6/8) a beat has where they are counted; 1 elsewhere. */
function unitsIn(beat: PatternBeat, meter: Meter): number {
  return hasGroupedBeats(meter) ? beat.length / unitTicks(meter) : 1;
}

/** What is said on every step of a beat; the number on the first. */
function beatCounts(beat: PatternBeat, grid: CountGrid, style: CountStyle): string[] {
  const { division } = beat;
  const units = style === 'units' ? unitsIn(beat, grid.meter) : 1;
  const stepsToUnit = division / units;
  const first = units === 1 ? beat.beat + 1 : firstUnit(beat, grid);
  if (units === 1 || (stepsToUnit !== 1 && stepsToUnit !== 2))
    return [String(first), ...STEP_NAMES[style][division]];
  return Array.from({ length: division }, (_, step) =>
    step % stepsToUnit === 0 ? String(first + step / stepsToUnit) : '&',
  );
}

function firstUnit(beat: PatternBeat, grid: CountGrid): number {
  const barStart = patternBeats(grid).find((other) => other.bar === beat.bar)?.start ?? 0;
  return (beat.start - barStart) / unitTicks(grid.meter) + 1;
}

/**
 * The count on every step of a pattern's grid, in order, as it is spoken: `1 & 2 &`, `1 e & a`,
 * in 6/8 `1 & a 2 & a`. Beats are numbered from 1 in each bar; over 8 and 16 a beat is the felt one
 * (a dotted quarter), unless the style counts units.
 */
export function countSyllables(grid: CountGrid, style: CountStyle = 'and-a'): string[] {
  return patternBeats(grid).flatMap((beat) => beatCounts(beat, grid, style));
}

/** Index of the step that is nearest to a tick, the earlier of two. */
function nearestStep(steps: readonly Step[], at: Ticks): number {
  const after = steps.findIndex((step) => step.at >= at);
  const before = after < 0 ? steps.length - 1 : after - 1;
  if (after <= 0) return after < 0 ? before : after;
  return at - steps[before]!.at <= steps[after]!.at - at ? before : after;
}

/**
 * Attacks as they are spoken, `1 & (2) & 3`, bars divided by ` | `. `at` are ticks from the start
 * of the grid; what lies between two steps is spoken on the nearer. Counts in brackets are silent:
 * a beat that is only thought because something after it in the beat sounds, the step before a `ta`
 * that would not be clear without it, the 1 of an empty bar, the last unit of the last bar where it
 * would not be clear that units are counted. `parseCounts` with the same meter and
 * divisions reads back the same attacks.
 */
export function formatCounts(
  at: readonly Ticks[],
  grid: CountGrid,
  style: CountStyle = 'and-a',
): string {
  const steps = patternSteps(grid);
  const sounding = new Set(at.map((tick) => steps[nearestStep(steps, tick)]));
  const bars = Array.from({ length: grid.bars }, () => [] as string[]);
  for (const beat of patternBeats(grid)) {
    const inside = steps.filter((step) => step.beat.start === beat.start);
    const names = beatCounts(beat, grid, style);
    bars[beat.bar]!.push(
      ...spokenBeat(
        inside.map((step) => sounding.has(step)),
        names,
      ),
    );
  }
  if (style === 'units' && !showsUnits(bars.flat(), grid.meter))
    bars.at(-1)?.push(`(${grid.meter.beats})`);
  return bars.map((counts) => (counts.length > 0 ? counts.join(' ') : '(1)')).join(' | ');
}

/** Whether it can be heard that units are counted: a number is higher than the bar has felt beats. */
function showsUnits(counts: readonly string[], meter: Meter): boolean {
  const numbers = counts.map((count) => Number.parseInt(count.replace('(', ''), 10));
  return !hasGroupedBeats(meter) || numbers.some((n) => n > beatLengths(meter).length);
}

/** The sounding steps of one beat as they are spoken, with the silent counts that make them clear. */
function spokenBeat(sounding: readonly boolean[], names: readonly string[]): string[] {
  const spoken: string[] = [];
  let last: number | undefined;
  for (const [step, name] of names.entries()) {
    if (!sounding[step]) continue;
    if (last === undefined && step > 0 && !isNumber(name) && !isNumber(names[step - 1]!))
      spoken.push(`(${names[0]})`);
    if (!isClear(names, step, last)) spoken.push(`(${names[step - 1]})`);
    spoken.push(name);
    last = step;
  }
  return spoken;
}

function isNumber(name: string): boolean {
  return /^\d/.test(name);
}

/** Whether a step's syllable, spoken after an earlier step of the beat, can mean no step before this one. */
function isClear(names: readonly string[], step: number, last: number | undefined): boolean {
  const name = names[step]!;
  if (isNumber(name)) return true;
  const from = last ?? 0;
  const first = names.findIndex((other, i) => i > from && other === name);
  const numbersBetween = names.slice(from + 1, step).some(isNumber);
  return first === step && !numbersBetween && (last !== undefined || !isNumber(names[step - 1]!));
}

/**
 * Reads spoken counts: `1 & 2 & 3 e & a`, `1 a 2 a`, `1 & (2) & 3 | 1 (2) 3`. Every count that is
 * written sounds, except in brackets; what is not written is silent. Syllables: `e & a`, thirds as
 * `& a`, `trip let` or `la li`, finer steps as `ta`; `and`, `+` and `n` stand for `&`. How counts
 * fall into beats and bars (also counted in eighths, `1 2 3 4 5 6` in 6/8): `saidBeats`.
 *
 * `divisions` (one, or one for each felt beat, repeated as far as needed) says how beats are
 * usually divided, which decides what `a` means: the last quarter of a beat or its last third.
 * Without it a dotted beat has thirds, and any other the coarsest division that has all its counts;
 * a usual division that lacks a count gives way likewise. Beats without counts keep the usual one,
 * or have one step. The result has as many bars as were counted.
 */
export function parseCounts(
  text: string,
  meter: Meter,
  divisions?: Division | readonly Division[],
): Result<SaidCounts, CountsError> {
  const tokens = countTokens(text);
  if (!tokens.ok) return tokens;
  const beats = saidBeats(tokens.value, meter);
  if (!beats.ok) return beats;
  const bars = beats.value.at(-1)!.bar + 1;
  const perBar = beatLengths(meter).length;
  const usual = usualDivisions(meter, bars, divisions);
  const found = usual.map((division) => division ?? 1);
  const sounding: { readonly index: number; readonly steps: readonly number[] }[] = [];
  for (const beat of beats.value) {
    const index = beat.bar * perBar + beat.beat;
    const steps = soundingSteps(beat, usual[index]);
    if (!steps.ok) return steps;
    found[index] = steps.value.division;
    sounding.push({ index, steps: steps.value.steps });
  }
  const grid = { meter, bars, divisions: found };
  return ok({ ...grid, at: ticksOfSteps(grid, sounding) });
}

function usualDivisions(
  meter: Meter,
  bars: number,
  divisions: Division | readonly Division[] | undefined,
): (Division | undefined)[] {
  const beats = beatLengths(meter);
  const given = typeof divisions === 'number' ? [divisions] : (divisions ?? []);
  return Array.from({ length: bars * beats.length }, (_, i) => {
    const isDotted = (beats[i % beats.length] ?? 0) / unitTicks(meter) === 3;
    return given[i % given.length] ?? (isDotted ? 3 : undefined);
  });
}

function ticksOfSteps(
  grid: CountGrid,
  sounding: readonly { readonly index: number; readonly steps: readonly number[] }[],
): Ticks[] {
  const steps = patternSteps(grid);
  const beats = patternBeats(grid);
  return sounding.flatMap((beat) =>
    steps
      .filter((step) => step.beat.start === beats[beat.index]!.start)
      .filter((step) => beat.steps.includes(step.index))
      .map((step) => step.at),
  );
}
