import type { Seconds } from '../core/time/ticks.ts';

/**
 * The numbers that are spoken, “one” first, each with the onset of its stressed vowel and its end,
 * in seconds from its file's beginning. How they were measured: `samples/count/CREDITS.md`.
 */
export const COUNT_WORDS: readonly {
  readonly word: string;
  readonly vowelSec: Seconds;
  readonly endSec: Seconds;
}[] = [
  { word: 'one', vowelSec: 0.065, endSec: 0.325 },
  { word: 'two', vowelSec: 0.058, endSec: 0.33 },
  { word: 'three', vowelSec: 0.067, endSec: 0.335 },
  { word: 'four', vowelSec: 0.105, endSec: 0.39 },
  { word: 'five', vowelSec: 0.113, endSec: 0.445 },
  { word: 'six', vowelSec: 0.107, endSec: 0.46 },
  { word: 'seven', vowelSec: 0.096, endSec: 0.42 },
  { word: 'eight', vowelSec: 0.01, endSec: 0.362 },
  { word: 'nine', vowelSec: 0.062, endSec: 0.357 },
  { word: 'ten', vowelSec: 0.057, endSec: 0.345 },
  { word: 'eleven', vowelSec: 0.112, endSec: 0.394 },
  { word: 'twelve', vowelSec: 0.104, endSec: 0.534 },
];

/** Marcus's rule: the share of the consonants before the vowel, and of all from the vowel on, that come before the middle. */
const SHARES = { before: 0.65, from: 0.25 } as const;

const URLS = import.meta.glob<string>('./samples/count/*.ogg', {
  query: '?url',
  import: 'default',
  eager: true,
});

/** Address of the recording of a word of `COUNT_WORDS`. */
export function wordUrl(word: string): string {
  const url = URLS[`./samples/count/${word}.ogg`];
  if (url === undefined) throw new Error(`no recording of “${word}”`);
  return url;
}

function relativeMiddleSec({ vowelSec, endSec }: (typeof COUNT_WORDS)[number]): Seconds {
  return SHARES.before * vowelSec + SHARES.from * (endSec - vowelSec);
}

/** What the rule leaves open, the same for all words: set so that they come with their vowels on the whole. */
const FROM_RULE_SEC: Seconds =
  COUNT_WORDS.reduce((sum, word) => sum + word.vowelSec - relativeMiddleSec(word), 0) /
  COUNT_WORDS.length;

/**
 * How long before its beat the recording of a number must begin, so that its perceptual centre falls
 * on the beat (docs/sources.md#perceptual-centres); 0 for what is not spoken.
 */
export function wordAheadSec(says: number | undefined): Seconds {
  const word = says === undefined ? undefined : COUNT_WORDS[says - 1];
  return word ? relativeMiddleSec(word) + FROM_RULE_SEC : 0;
}
