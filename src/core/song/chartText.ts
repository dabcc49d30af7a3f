import { err, ok, type Result } from '../result.ts';
import { MOST_BARS } from './songLength.ts';

/**
 * Where something stands in a chart's text: its bar (from 1), its line (from 1), its column in that
 * line and its place in the whole text (both from 0), and the text itself.
 */
export type ChartPlace = {
  readonly bar: number;
  readonly line: number;
  readonly column: number;
  readonly at: number;
  readonly text: string;
};

/** The tokens of one bar; `place` is the bar's whole text without the bar lines. */
export type BarText = { readonly place: ChartPlace; readonly tokens: readonly ChartPlace[] };

type Cell = Omit<ChartPlace, 'bar'>;

/**
 * The stretches between bar lines. What is blank before the first and after the last bar line of a
 * line of text is no bar, nor is the nothing inside a double bar line.
 */
function cellsOf(text: string, line: number, lineAt: number): Cell[] {
  let column = 0;
  const cells = text.split('|').map((cell) => {
    const place = { line, column, at: lineAt + column, text: cell };
    column += cell.length + 1;
    return place;
  });
  return cells.filter((cell, i) => {
    const isOuter = i === 0 || i === cells.length - 1;
    return isOuter ? cell.text.trim() !== '' : cell.text !== '';
  });
}

/** More characters than so many bars are written with. */
export const MOST_CHART_CHARACTERS = 1_000_000;

/** A chart that is too long to be read. */
export type ChartLengthError =
  | { readonly kind: 'too-much-text'; readonly characters: number; readonly most: number }
  | { readonly kind: 'too-many-bars'; readonly bars: number; readonly most: number };

function tokensOf(bar: ChartPlace): ChartPlace[] {
  return [...bar.text.matchAll(/\S+/g)].map((match) => ({
    ...bar,
    column: bar.column + match.index,
    at: bar.at + match.index,
    text: match[0],
  }));
}

/**
 * The bars of a chart's text in order, across lines: a line's end is a bar line too. Empty text has
 * none; at most `MOST_BARS` of them in `MOST_CHART_CHARACTERS` are read.
 */
export function barTexts(text: string): Result<BarText[], ChartLengthError> {
  if (text.length > MOST_CHART_CHARACTERS)
    return err({
      kind: 'too-much-text',
      characters: text.length,
      most: MOST_CHART_CHARACTERS,
    });
  let lineAt = 0;
  const cells = text.split('\n').flatMap((line, i) => {
    const found = cellsOf(line, i + 1, lineAt);
    lineAt += line.length + 1;
    return found;
  });
  if (cells.length > MOST_BARS)
    return err({ kind: 'too-many-bars', bars: cells.length, most: MOST_BARS });
  return ok(
    cells.map((cell, i) => {
      const place = { bar: i + 1, ...cell };
      return { place, tokens: tokensOf(place) };
    }),
  );
}
