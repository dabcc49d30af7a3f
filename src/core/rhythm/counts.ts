import { ok, type Result } from '../result.ts';
import { barTicks, beatLengths, hasGroupedBeats, type Meter, unitTicks } from '../time/meter.ts';
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
  stepTick,
} from './pattern.ts';
import {
  type SaidBeat,
  saidBeats,
  saysThirds,
  soundingSteps,
  type UsualBeat,
} from './saidBeats.ts';

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
  return (beat.start - beat.bar * barTicks(grid.meter)) / unitTicks(grid.meter) + 1;
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
  let [before, after] = [-1, steps.length];
  while (after - before > 1) {
    const middle = (before + after) >> 1;
    if (steps[middle]!.at < at) before = middle;
    else after = middle;
  }
  if (before < 0) return after;
  if (after === steps.length) return before;
  return at - steps[before]!.at <= steps[after]!.at - at ? before : after;
}

/**
 * Attacks as they are spoken, `1 & (2) & 3`, bars divided by ` | `. `at` are ticks from the start
 * of the grid; what lies between two steps is spoken on the nearer. Counts in brackets are silent:
 * a beat that is only thought because something after it in the beat sounds, the step before a `ta`
 * that would not be clear without it, the `e` without which an `a` would be the last third of a dotted
 * beat, the 1 of an empty bar, the last unit of the last bar where it would not be clear that units
 * are counted. `parseCounts` with the same meter and
 * divisions reads back the same attacks.
 */
export function formatCounts(
  at: readonly Ticks[],
  grid: CountGrid,
  style: CountStyle = 'and-a',
): string {
  const steps = patternSteps(grid);
  const sounding = new Set(at.map((tick) => nearestStep(steps, tick)));
  const bars = Array.from({ length: grid.bars }, () => [] as string[]);
  let first = 0;
  for (const beat of patternBeats(grid)) {
    const names = beatCounts(beat, grid, style);
    const inBeat = names.map((_, step) => sounding.has(first + step));
    const meansQuarters = isDotted(beat.length, grid.meter) && beat.division % 3 !== 0;
    bars[beat.bar]!.push(...spokenBeat(inBeat, names, meansQuarters));
    first += beat.division;
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

/**
 * The sounding steps of one beat as they are spoken, with the silent counts that make them clear.
 * `meansQuarters`: an `a` is the beat's last quarter where it would be taken for its last third.
 */
function spokenBeat(
  sounding: readonly boolean[],
  names: readonly string[],
  meansQuarters: boolean,
): string[] {
  const spoken: string[] = [];
  const needsE = meansQuarters && names.some((name, step) => name === 'a' && sounding[step]);
  let last: number | undefined;
  for (const [step, name] of names.entries()) {
    if (!sounding[step] && !(needsE && name === 'e')) continue;
    if (last === undefined && step > 0 && !isNumber(name) && !isNumber(names[step - 1]!))
      spoken.push(`(${names[0]})`);
    if (!isClear(names, step, last)) spoken.push(`(${names[step - 1]})`);
    spoken.push(sounding[step] ? name : `(${name})`);
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
 * Reads spoken counts: `1 & 2 & 3 e & a`, `1 a 2 a`, `1 & (2) & 3 | 1 (2) 3`, `one-and-a two`,
 * `1e&a2e&a`. Every count that is written sounds, except in brackets; what is not written is silent.
 * Syllables: `e & a`, thirds as `& a`, `trip let` or `la li`, finer steps as `ta`; their spellings:
 * `countsInWord`. How counts fall into beats and bars (also counted in eighths, `1 2 3 4 5 6` in 6/8,
 * or by groups, `1 2 3 1 2` in 5/4): `saidBeats`.
 *
 * `divisions` (one, or one for each felt beat, repeated as far as needed) says how beats are
 * usually divided, which decides what `a` means: the last quarter of a beat or its last third.
 * Without it a dotted beat has thirds, and any other the coarsest division that has all its counts;
 * a usual division that lacks a count gives way likewise. A dotted beat that is usually divided in
 * halves or quarters, as after a change of meter, has thirds in all bars as soon as one is counted
 * with an `a` and without an `e`. Beats without counts keep the usual one, or have one step. The
 * result has as many bars as were counted.
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
  const usual = usualBeats(meter, bars, divisions);
  const indexOf = ({ bar, beat }: SaidBeat) => bar * perBar + beat;
  const inThirds = beats.value.some((beat) => saysThirds(beat, usual[indexOf(beat)]!));
  const found = usual.map(({ division }) => division ?? 1);
  const sounding: SoundingBeat[] = [];
  for (const beat of beats.value) {
    const index = indexOf(beat);
    const steps = soundingSteps(beat, usual[index]!, inThirds);
    if (!steps.ok) return steps;
    found[index] = steps.value.division;
    sounding.push({ index, steps: steps.value.steps });
  }
  const grid = { meter, bars, divisions: found };
  return ok({ ...grid, at: ticksOfSteps(grid, sounding) });
}

/** The steps that sound of the beat with this index, counted over all bars. */
type SoundingBeat = { readonly index: number; readonly steps: readonly number[] };

function isDotted(beatTicks: Ticks, meter: Meter): boolean {
  return beatTicks / unitTicks(meter) === 3;
}

function usualBeats(
  meter: Meter,
  bars: number,
  divisions: Division | readonly Division[] | undefined,
): UsualBeat[] {
  const dotted = beatLengths(meter).map((length) => isDotted(length, meter));
  const given = typeof divisions === 'number' ? [divisions] : (divisions ?? []);
  return Array.from({ length: bars * dotted.length }, (_, i) => {
    const isDottedBeat = dotted[i % dotted.length]!;
    return {
      division: given[i % given.length] ?? (isDottedBeat ? 3 : undefined),
      isDotted: isDottedBeat,
    };
  });
}

function ticksOfSteps(grid: CountGrid, sounding: readonly SoundingBeat[]): Ticks[] {
  const beats = patternBeats(grid);
  return sounding.flatMap(({ index, steps }) => steps.map((step) => stepTick(beats[index]!, step)));
}
