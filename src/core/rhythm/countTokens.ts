import { err, ok, type Result } from '../result.ts';
import { countsInWord } from './countNames.ts';

/** Why spoken counts cannot be understood; `at` is the place in the text, 0-based. */
export type CountsError =
  | { readonly kind: 'nothing-said'; readonly text: string; readonly at: number }
  | { readonly kind: 'too-much-said'; readonly characters: number; readonly most: number }
  | { readonly kind: 'unknown-count'; readonly text: string; readonly at: number }
  | { readonly kind: 'open-bracket'; readonly text: string; readonly at: number }
  | { readonly kind: 'stray-bracket'; readonly text: string; readonly at: number }
  | {
      readonly kind: 'no-such-beat';
      readonly text: string;
      readonly at: number;
      readonly beats: number;
    }
  | { readonly kind: 'no-such-step'; readonly text: string; readonly at: number };

/**
 * One count as it was said, `text` in small letters; `silent` where it stands in brackets: counted, not
 * played. A syllable's `name` is its usual spelling.
 */
export type CountToken = {
  readonly text: string;
  readonly at: number;
  readonly silent: boolean;
} & (
  | { readonly kind: 'bar-line' }
  | { readonly kind: 'number'; readonly number: number }
  | { readonly kind: 'syllable'; readonly name: string }
);

/** More characters than anybody says in the bars of a pattern. */
export const MOST_SAID_CHARACTERS = 100_000;

/** No meter counts higher: a longer row of figures is several counts, `1234`. */
const HIGHEST_NUMBER = 32;

const CLOSING: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}' };

/** What divides counts and means nothing: blanks, commas, dots, dashes, quotation marks. */
const WORD = /\|+|[()[\]{}]|\d+|[^\s()[\]{}|\d,;:.…·•_\-‐-―−'’‘"“”]+/g;

/** The counts of a text in order. Brackets of all kinds make silent; they may stand inside each other. */
export function countTokens(text: string): Result<CountToken[], CountsError> {
  if (text.length > MOST_SAID_CHARACTERS)
    return err({ kind: 'too-much-said', characters: text.length, most: MOST_SAID_CHARACTERS });
  const tokens: CountToken[] = [];
  const opened: { readonly text: string; readonly at: number }[] = [];
  for (const match of text.matchAll(WORD)) {
    const place = { text: match[0], at: match.index };
    if (/^[([{]/.test(place.text)) opened.push(place);
    else if (/^[)\]}]/.test(place.text)) {
      if (CLOSING[opened.pop()?.text ?? ''] !== place.text)
        return err({ kind: 'stray-bracket', ...place });
    } else {
      const said = tokensOf(place.text.toLowerCase(), place.at, opened.length > 0);
      if (!said) return err({ kind: 'unknown-count', ...place });
      for (const token of said) tokens.push(token);
    }
  }
  const open = opened.at(-1);
  if (open) return err({ kind: 'open-bracket', ...open });
  return tokens.some((token) => token.kind !== 'bar-line')
    ? ok(tokens)
    : err({ kind: 'nothing-said', text, at: 0 });
}

function tokensOf(word: string, at: number, silent: boolean): CountToken[] | undefined {
  if (word.startsWith('|')) return [{ kind: 'bar-line', text: '|', at, silent: false }];
  if (/^\d/.test(word)) return numbersOf(word, at, silent);
  return countsInWord(word)?.map(({ said, text, at: inWord }) => {
    const place = { text, at: at + inWord, silent };
    return typeof said === 'number'
      ? { ...place, kind: 'number' as const, number: said }
      : { ...place, kind: 'syllable' as const, name: said };
  });
}

function numbersOf(figures: string, at: number, silent: boolean): CountToken[] {
  const texts = Number(figures) > HIGHEST_NUMBER ? figures.split('') : [figures];
  return texts.map((text, i) => ({
    kind: 'number',
    text,
    number: Number(text),
    at: at + i,
    silent,
  }));
}
