import { err, ok, type Result } from '../result.ts';
import { syllableOf } from './countNames.ts';

/** Why spoken counts cannot be understood; `at` is the place in the text, 0-based. */
export type CountsError =
  | { readonly kind: 'nothing-said'; readonly text: string; readonly at: number }
  | { readonly kind: 'unknown-count'; readonly text: string; readonly at: number }
  | { readonly kind: 'open-bracket'; readonly text: string; readonly at: number }
  | {
      readonly kind: 'no-such-beat';
      readonly text: string;
      readonly at: number;
      readonly beats: number;
    }
  | { readonly kind: 'no-such-step'; readonly text: string; readonly at: number };

/** One word of spoken counts; `silent` where it stands in brackets: counted, not played. */
export type CountToken = {
  readonly kind: 'bar-line' | 'number' | 'syllable';
  readonly text: string;
  readonly at: number;
  readonly silent: boolean;
};

/** The counts of a text in order, syllables in their usual spelling. */
export function countTokens(text: string): Result<CountToken[], CountsError> {
  const tokens: CountToken[] = [];
  let openedAt: number | undefined;
  for (const match of text.matchAll(/\|+|[()]|\d+|[^\s()|\d]+/g)) {
    const word = match[0];
    if (word === '(') openedAt = match.index;
    else if (word === ')') openedAt = undefined;
    else {
      const token = countToken(word.toLowerCase(), match.index, openedAt !== undefined);
      if (!token) return err({ kind: 'unknown-count', text: word, at: match.index });
      tokens.push(token);
    }
  }
  if (openedAt !== undefined) return err({ kind: 'open-bracket', text: '(', at: openedAt });
  return tokens.some((token) => token.kind !== 'bar-line')
    ? ok(tokens)
    : err({ kind: 'nothing-said', text, at: 0 });
}

function countToken(word: string, at: number, silent: boolean): CountToken | undefined {
  if (word.startsWith('|')) return { kind: 'bar-line', text: '|', at, silent: false };
  if (/^\d+$/.test(word)) return { kind: 'number', text: word, at, silent };
  const syllable = syllableOf(word);
  return syllable === undefined ? undefined : { kind: 'syllable', text: syllable, at, silent };
}
