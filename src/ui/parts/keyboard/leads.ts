import type { KeyNumber, Semitones } from '../../../core/harmony/pitch.ts';

/** One note on its way to the next chord; it stays where both keys are the same. */
export type Lead = { readonly from: KeyNumber; readonly to: KeyNumber };

/** All ways to take `count` of the items, in their order. */
function choices<T>(items: readonly T[], count: number): T[][] {
  if (count === 0) return [[]];
  return items.flatMap((item, i) =>
    choices(items.slice(i + 1), count - 1).map((rest) => [item, ...rest]),
  );
}

function lowToHigh(keys: readonly KeyNumber[]): KeyNumber[] {
  return keys.toSorted((a, b) => a - b);
}

function nearest(key: KeyNumber, keys: readonly KeyNumber[]): KeyNumber {
  return keys.reduce((best, other) =>
    Math.abs(other - key) < Math.abs(best - key) ? other : best,
  );
}

/** The pairs of a smaller with a larger chord when `paired` of the larger are taken one for one. */
function pairsWith(
  fewer: readonly KeyNumber[],
  more: readonly KeyNumber[],
  paired: readonly KeyNumber[],
): [KeyNumber, KeyNumber][] {
  return more.map((key) => {
    const place = paired.indexOf(key);
    return [place < 0 ? nearest(key, fewer) : fewer[place]!, key];
  });
}

function lengthOf(pairs: readonly (readonly [KeyNumber, KeyNumber])[]): Semitones {
  return pairs.reduce((total, [a, b]) => total + Math.abs(a - b), 0);
}

/**
 * Which note of a hand goes where when the chord changes: the pairing whose total is `motion`. With
 * unequal chords a note of the smaller one divides, or two meet in it. From or to a free hand none.
 */
export function leads(from: readonly KeyNumber[], to: readonly KeyNumber[]): Lead[] {
  const [start, end] = [lowToHigh(from), lowToHigh(to)];
  if (start.length === 0 || end.length === 0) return [];
  const grows = start.length <= end.length;
  const [fewer, more] = grows ? [start, end] : [end, start];
  const pairings = choices(more, fewer.length).map((paired) => pairsWith(fewer, more, paired));
  const best = pairings.reduce((a, b) => (lengthOf(b) < lengthOf(a) ? b : a));
  return best.map(([one, other]) => (grows ? { from: one, to: other } : { from: other, to: one }));
}
