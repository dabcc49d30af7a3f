import type { ClickSettings } from '../../core/practice/practiceSettings.ts';

/** The lengths of a count-in, in bars, with their words. */
export const COUNT_INS: readonly {
  readonly bars: ClickSettings['countInBars'];
  readonly words: string;
}[] = [
  { bars: 0, words: 'none' },
  { bars: 1, words: 'one bar' },
  { bars: 2, words: 'two bars' },
];
