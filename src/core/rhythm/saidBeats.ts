import { err, ok, type Result } from '../result.ts';
import { beatLengths, hasGroupedBeats, type Meter } from '../time/meter.ts';
import { countedNumbers } from './countedNumbers.ts';
import { stepNamed } from './countNames.ts';
import type { CountsError, CountToken } from './countTokens.ts';
import { DIVISIONS, type Division } from './pattern.ts';

/** A place that a number counts: a felt beat of the bar and, where units are counted, one of its `units`. */
type CountedPlace = { readonly beat: number; readonly unit: number; readonly units: number };

/** A count and the unit of its beat it belongs to. */
type Said = { readonly token: CountToken; readonly unit: number };

/** The counts that fall into one felt beat of one bar, in order. `units` is 1 where beats are counted. */
export type SaidBeat = {
  readonly bar: number;
  readonly beat: number;
  readonly units: number;
  readonly said: readonly Said[];
};

/** The steps of one beat that sound, out of so many. */
export type SoundingSteps = { readonly division: Division; readonly steps: readonly number[] };

/**
 * Gathers counts by beats. A bar line, or a number that is not higher than the one before, begins a
 * new bar; a bar line before the first count has no meaning. A syllable at the start of a bar
 * belongs to its first beat. Over 8 and 16 numbers count felt beats, unless one of them is higher
 * than the bar has felt beats: then all of them count units (1 to 6 in 6/8). Groups that are counted
 * for themselves, and bars that begin with their own number: `countedNumbers`.
 */
export function saidBeats(
  tokens: readonly CountToken[],
  meter: Meter,
): Result<SaidBeat[], CountsError> {
  const numbers = countedNumbers(tokens, meter);
  const places = countedPlaces([...numbers.values()], meter);
  const beats: (SaidBeat & { said: Said[] })[] = [];
  let bar = 0;
  let number = 0;
  for (const token of tokens) {
    if (token.kind === 'bar-line') {
      if (beats.length > 0) bar++;
      number = 0;
      continue;
    }
    const counted = numbers.get(token);
    if (counted !== undefined) {
      if (number > 0 && counted <= number) bar++;
      number = counted;
    }
    const place = counted === 0 ? undefined : places[Math.max(number, 1) - 1];
    if (!place)
      return err({ kind: 'no-such-beat', text: token.text, at: token.at, beats: places.length });
    const { beat, unit, units } = place;
    const current = beats.at(-1);
    if (current?.bar === bar && current.beat === beat) current.said.push({ token, unit });
    else beats.push({ bar, beat, units, said: [{ token, unit }] });
  }
  return ok(beats);
}

function countedPlaces(numbers: readonly number[], meter: Meter): CountedPlace[] {
  const beats = beatLengths(meter);
  if (!hasGroupedBeats(meter) || numbers.every((number) => number <= beats.length))
    return beats.map((_, beat) => ({ beat, unit: 0, units: 1 }));
  return meter.groups.flatMap((units, beat) =>
    Array.from({ length: units }, (_, unit) => ({ beat, unit, units })),
  );
}

/** How a beat is divided where nothing else is said, and whether it is a dotted one. */
export type UsualBeat = { readonly division: Division | undefined; readonly isDotted: boolean };

/** Divisions in the order in which they are tried, coarse ones first, but thirds first in a dotted beat. */
const PLAIN_DIVISIONS: readonly Division[] = [1, 2, 4, 3, 8, 6];
const DOTTED_DIVISIONS: readonly Division[] = [1, 3, 6, 2, 4, 8];

/**
 * Whether a dotted beat that is usually divided otherwise is counted in thirds: there is an `a` in it,
 * and neither an `e` nor a `ta`, as halves and quarters of the beat would have (`1 & a` in 6/8).
 */
export function saysThirds({ units, said }: SaidBeat, usual: UsualBeat): boolean {
  const names = said.map(({ token }) => (token.kind === 'syllable' ? token.name : ''));
  return (
    !hasThirds(usual) &&
    usual.isDotted &&
    units === 1 &&
    names.includes('a') &&
    !names.includes('e') &&
    !names.includes('ta')
  );
}

function hasThirds({ division }: UsualBeat): boolean {
  return division !== undefined && division % 3 === 0;
}

/**
 * Which steps of a beat sound, and out of how many: with the usual division if that has all the
 * counts in their order, otherwise with the coarsest that has (so `1 & a` of a quarter are
 * sixteenths if thirds are not usual), in a dotted beat with thirds before halves. `inThirds`: dotted
 * beats have thirds even before their usual division, as long as the counts let them. Where units are counted the beat
 * has one or two steps to each. The error names a count for which no division has a step there.
 */
export function soundingSteps(
  { units, said }: SaidBeat,
  usual: UsualBeat,
  inThirds: boolean,
): Result<SoundingSteps, CountsError> {
  for (const division of units > 1 ? [units, 2 * units] : divisionsFor(usual, inThirds)) {
    const known = DIVISIONS.find((d) => d === division);
    const steps = known && stepsSaid(said, known, units);
    if (steps) return ok({ division: known, steps });
  }
  const { token } = said.find((count) => count.token.kind === 'syllable') ?? said[0]!;
  return err({ kind: 'no-such-step', text: token.text, at: token.at });
}

function divisionsFor(usual: UsualBeat, inThirds: boolean): readonly (Division | undefined)[] {
  if (!usual.isDotted) return [usual.division, ...PLAIN_DIVISIONS];
  const first = inThirds && !hasThirds(usual) ? ([3, 6] as const) : [];
  return [...first, usual.division, ...DOTTED_DIVISIONS];
}

/** The sounding steps, or undefined where a count has no step after the one before it. */
function stepsSaid(said: readonly Said[], division: Division, units: number): number[] | undefined {
  const sounding: number[] = [];
  let last = -1;
  for (const { token, unit } of said) {
    const step = stepOf(token, (unit * division) / units, division, units, Math.max(last, 0));
    if (step === undefined || step <= last) return undefined;
    if (!token.silent) sounding.push(step);
    last = step;
  }
  return sounding;
}

function stepOf(
  token: CountToken,
  unitStep: number,
  division: Division,
  units: number,
  after: number,
): number | undefined {
  if (token.kind !== 'syllable') return unitStep;
  if (units === 1) return stepNamed(token.name, division, after);
  return token.name === '&' && division === 2 * units ? unitStep + 1 : undefined;
}
