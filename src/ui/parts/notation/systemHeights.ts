import { SPACE, STAFF_REACH, type Units } from './glyphs.ts';
import { inkReach } from './inkReach.ts';
import { capitalHeight } from './lettering.ts';
import type { Notation } from './notation.ts';
import type { EngravedBar } from './writtenBars.ts';

/**
 * Heights on a system, downwards from its top: the baselines of words and chord symbols, the middle
 * lines of both staves, the baseline of the counts, and the whole.
 */
export type SystemHeights = {
  readonly words: Units;
  readonly chords: Units;
  readonly right: Units;
  readonly left: Units;
  readonly counts: Units;
  readonly total: Units;
};

/** Least distance between the middle lines of the staves, and from a staff to text over or under it. */
const STAVES_APART: Units = 105;
const STAVES_CLEAR: Units = 14;
const TEXT_CLEAR: Units = 10;
const WORDS_CLEAR: Units = 15;
const CHORD_HEIGHT: Units = 2 * SPACE + STAFF_REACH;
/** The baseline of a bar number over the middle line: clear of the clef. */
export const NUMBER_HEIGHT: Units = 40;

const COUNT_DEPTH: Units = 2 * SPACE + STAFF_REACH;

/** What is written over a bar. */
type BarText = { readonly index: number; readonly written: EngravedBar; readonly words?: string };

function hasBoth({ written, words }: BarText): boolean {
  return words !== undefined && written.bar.chords.length > 0;
}

/** The number of a system's first bar, where it is written: in music with a meter, from the second system on. */
export function numberOf(
  bars: readonly Pick<BarText, 'index'>[],
  kind: Notation['kind'],
): number | undefined {
  const index = bars[0]?.index ?? 0;
  return kind === 'in-time' && index > 0 ? index + 1 : undefined;
}

/** The baseline of a bar's words: over its chord symbols, or in their place where it has none. */
export function wordsHeight(bar: BarText, heights: SystemHeights): Units {
  return hasBoth(bar) ? heights.words : heights.chords;
}

/** The heights of a system that holds these bars: everything as close as its ink allows, each kind of text on one line. */
export function systemHeights(bars: readonly BarText[], kind: Notation['kind']): SystemHeights {
  const inks = bars.map(({ written }) => ({
    right: inkReach(written, 'right'),
    left: inkReach(written, 'left'),
  }));
  const hasWords = bars.some(({ words }) => words !== undefined);
  const hasChords = bars.some(({ written }) => written.bar.chords.length > 0);
  const words = bars.some(hasBoth) ? capitalHeight('words') : 0;
  const line = hasChords ? capitalHeight('chord') : hasWords ? capitalHeight('words') : 0;
  const chords = words + (words > 0 ? WORDS_CLEAR : 0) + line;
  const over = Math.max(...inks.map(({ right }) => right.above)) + TEXT_CLEAR;
  const number =
    numberOf(bars, kind) === undefined ? 0 : NUMBER_HEIGHT + capitalHeight('barNumber');
  const right = Math.max(
    number,
    chords + (hasChords || hasWords ? Math.max(over, CHORD_HEIGHT) : over),
  );
  const left =
    right +
    Math.max(STAVES_APART, ...inks.map((ink) => ink.right.below + ink.left.above + STAVES_CLEAR));
  const under = Math.max(...inks.map((ink) => ink.left.below)) + TEXT_CLEAR;
  const isCounted = kind === 'in-time';
  const counts = left + (isCounted ? Math.max(under, COUNT_DEPTH) + capitalHeight('count') : under);
  return { words, chords, right, left, counts, total: counts + TEXT_CLEAR / 2 };
}
