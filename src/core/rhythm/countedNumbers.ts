import { beatLengths, type Meter } from '../time/meter.ts';
import type { CountToken } from './countTokens.ts';

type NumberToken = Extract<CountToken, { readonly kind: 'number' }>;

/**
 * The number in its bar that every number of spoken counts stands for: as a rule the one that was said.
 * Groups may each be counted from one: `1 2 3 1 2` in 5/4 is a bar of 3+2, `1 2 1 2 1 2 3` one of 7/8.
 * That holds where each group is counted through, silent counts too, and the same numbers are not
 * whole bars (`1 2 3 1 2 3` in 7/8 are two); groups of two are never counted so if all are (4/4).
 * A bar may begin with its own number in place of its 1, where whole bars are counted:
 * `1 2 3 4 2 2 3 4`.
 */
export function countedNumbers(
  tokens: readonly CountToken[],
  meter: Meter,
): ReadonlyMap<CountToken, number> {
  const numbers = tokens.filter((token): token is NumberToken => token.kind === 'number');
  const counted = new Map<CountToken, number>(numbers.map((token) => [token, token.number]));
  for (const token of barNumbers(numbers, meter)) counted.set(token, 1);
  for (const bars of betweenBarLines(tokens)) {
    const runs = risingRuns(bars, counted);
    if (countsGroups(runs, meter)) setGroupNumbers(runs, meter, counted);
  }
  return counted;
}

/** The numbers of bars that stand where the bar's 1 would, if all whole bars begin with theirs. */
function barNumbers(numbers: readonly NumberToken[], meter: Meter): readonly NumberToken[] {
  const ways = [beatLengths(meter).length, meter.beats].filter((n) => n > 1);
  const beats = ways.find(
    (n) =>
      numbers.length > n &&
      numbers.length % n === 0 &&
      numbers.every(({ number }, i) => number === (i % n === 0 ? i / n : i % n) + 1),
  );
  return beats === undefined ? [] : numbers.filter((_, i) => i % beats === 0);
}

function betweenBarLines(tokens: readonly CountToken[]): NumberToken[][] {
  const stretches: NumberToken[][] = [[]];
  for (const token of tokens)
    if (token.kind === 'bar-line') stretches.push([]);
    else if (token.kind === 'number') stretches.at(-1)!.push(token);
  return stretches;
}

/** Numbers that rise, each run as far as they do. */
function risingRuns(
  numbers: readonly NumberToken[],
  counted: ReadonlyMap<CountToken, number>,
): NumberToken[][] {
  const runs: NumberToken[][] = [];
  let last = Number.POSITIVE_INFINITY;
  for (const token of numbers) {
    const number = counted.get(token)!;
    if (number > last) runs.at(-1)!.push(token);
    else runs.push([token]);
    last = number;
  }
  return runs;
}

/** Whether runs of numbers count groups through: all of them, or whole bars of them and the last in part. */
function countsGroups(runs: readonly (readonly NumberToken[])[], { groups, ...meter }: Meter) {
  if (groups.length < 2 || runs.length < groups.length || groups.every((group) => group <= 2))
    return false;
  const sizeOf = (run: number) => groups[run % groups.length]!;
  const beats = beatLengths({ groups, ...meter }).length;
  const areWhole = runs.every((run) => run.length === beats);
  const areThrough = runs.every((run, i) =>
    i === runs.length - 1 && runs.length > groups.length
      ? run.length <= sizeOf(i)
      : run.length === sizeOf(i),
  );
  const areFromOne = runs.every((run) => run.every(({ number }, i) => number === i + 1));
  return areThrough && areFromOne && !areWhole;
}

function setGroupNumbers(
  runs: readonly (readonly NumberToken[])[],
  { groups }: Meter,
  counted: Map<CountToken, number>,
): void {
  let before = 0;
  for (const [i, run] of runs.entries()) {
    if (i % groups.length === 0) before = 0;
    for (const token of run) counted.set(token, before + token.number);
    before += groups[i % groups.length]!;
  }
}
