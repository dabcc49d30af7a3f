import type { Division } from './pattern.ts';

/**
 * How counts are spoken. `and-a`: thirds of a beat are `1 & a`; `trip-let` and `la-li` name them
 * `1 trip let` and `1 la li`; `units` counts every eighth of 6/8, `1 2 3 4 5 6` (in meters over 2
 * and 4 it is the same as `and-a`). Halves and quarters of a beat are `1 e & a` in all of them.
 */
export const COUNT_STYLES = ['and-a', 'trip-let', 'la-li', 'units'] as const;

export type CountStyle = (typeof COUNT_STYLES)[number];

/** What is said on each step of a beat after the first, which is its number. */
type StepNames = Readonly<Record<Division, readonly string[]>>;

/** Finer steps than `e & a` and thirds are spoken `ta` between those (common practice). */
const AND_A: StepNames = {
  1: [],
  2: ['&'],
  3: ['&', 'a'],
  4: ['e', '&', 'a'],
  6: ['ta', '&', 'ta', 'a', 'ta'],
  8: ['ta', 'e', 'ta', '&', 'ta', 'a', 'ta'],
};

/** Syllables: docs/sources.md#count-syllables. */
export const STEP_NAMES: Readonly<Record<CountStyle, StepNames>> = {
  'and-a': AND_A,
  'trip-let': { ...AND_A, 3: ['trip', 'let'], 6: ['ta', 'trip', 'ta', 'let', 'ta'] },
  'la-li': { ...AND_A, 3: ['la', 'li'], 6: ['ta', 'la', 'ta', 'li', 'ta'] },
  units: AND_A,
};

/** Other ways to write the syllables, as they are typed. */
const SPELLINGS: Readonly<Record<string, string>> = {
  and: '&',
  '+': '&',
  n: '&',
  ah: 'a',
  uh: 'a',
  ee: 'e',
  lah: 'la',
  lee: 'li',
  lit: 'let',
};

/** A typed syllable in the spelling of `STEP_NAMES`; undefined where it is none. */
export function syllableOf(text: string): string | undefined {
  const name = SPELLINGS[text] ?? text;
  return ['&', 'e', 'a', 'trip', 'let', 'la', 'li', 'ta'].includes(name) ? name : undefined;
}

/**
 * The step of a beat that a syllable names when the beat has so many steps and the last one named
 * was `after` (0 is the beat itself): the first later step that has this name in any style.
 * Undefined where there is none.
 */
export function stepNamed(syllable: string, division: Division, after: number): number | undefined {
  for (let step = after + 1; step < division; step++)
    if (COUNT_STYLES.some((style) => STEP_NAMES[style][division][step - 1] === syllable))
      return step;
  return undefined;
}
