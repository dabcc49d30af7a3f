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

/** The ways in which syllables are typed; a word may be two of them. */
const SPELLINGS: ReadonlyMap<string, readonly string[]> = new Map<string, readonly string[]>([
  ...['&', 'e', 'a', 'trip', 'let', 'la', 'li', 'ta'].map((name) => [name, [name]] as const),
  ...['and', 'an', 'n', '+'].map((spelling) => [spelling, ['&']] as const),
  ...['ah', 'uh', 'da', 'duh'].map((spelling) => [spelling, ['a']] as const),
  ['ee', ['e']],
  ['lah', ['la']],
  ['lee', ['li']],
  ['lit', ['let']],
  ['triplet', ['trip', 'let']],
]);

/** The words for numbers, from one on. */
const NUMBER_WORDS =
  'one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen'.split(
    ' ',
  );

const LONGEST_SPELLING = Math.max(...[...SPELLINGS.keys()].map(({ length }) => length));

/** A count as it stands in a word: a number or a syllable in the spelling of `STEP_NAMES`, at so many characters. */
export type CountInWord = {
  readonly said: number | string;
  readonly text: string;
  readonly at: number;
};

/**
 * The counts of a word in small letters, also where they are run together: `e&a`, `oneanda`, `triplet`.
 * A number's word stands first. Undefined where anything else is in it.
 */
export function countsInWord(word: string): CountInWord[] | undefined {
  const counts: CountInWord[] = [];
  const number = NUMBER_WORDS.findLastIndex((text) => word.startsWith(text));
  let at = number < 0 ? 0 : NUMBER_WORDS[number]!.length;
  if (number >= 0) counts.push({ said: number + 1, text: word.slice(0, at), at: 0 });
  while (at < word.length) {
    const spelling = longestSpelling(word, at);
    if (spelling === undefined) return undefined;
    for (const said of SPELLINGS.get(spelling)!) counts.push({ said, text: spelling, at });
    at += spelling.length;
  }
  return counts;
}

function longestSpelling(word: string, at: number): string | undefined {
  for (let length = LONGEST_SPELLING; length > 0; length--) {
    const spelling = word.slice(at, at + length);
    if (SPELLINGS.has(spelling)) return spelling;
  }
  return undefined;
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
