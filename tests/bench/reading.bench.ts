import { expect, it } from 'vitest';
import type { Result } from '../../src/core/result.ts';
import { formatCounts, parseCounts } from '../../src/core/rhythm/counts.ts';
import { formatChartBars, parseChartBars } from '../../src/core/song/chart.ts';
import { meter, valueOf } from '../support/music.ts';

/** How many times as long the longer text is, and how many times as long as in proportion it may take. */
const LONGER = 8;
const MOST_UNEVEN = 3;

const FOUR = meter('4/4');
const SIX_EIGHT = meter('6/8');

/** What is read or written, for texts of so many bars. */
const READINGS: readonly {
  readonly name: string;
  readonly bars: number;
  readonly timed: (bars: number) => () => unknown;
}[] = [
  {
    name: 'counts in 4/4, read',
    bars: 400,
    timed: reading(
      (bars) => '1 e & a 2 & 3 & 4 | '.repeat(bars),
      (text) => parseCounts(text, FOUR),
    ),
  },
  {
    name: 'counts in 6/8 by eighths, read',
    bars: 400,
    timed: reading(
      (bars) => '1 2 3 4 5 & 6 '.repeat(bars),
      (text) => parseCounts(text, SIX_EIGHT),
    ),
  },
  {
    name: 'counts in 4/4, written',
    bars: 400,
    timed: (bars) => {
      const said = valueOf(parseCounts('1 e & a 2 & 3 & 4 | '.repeat(bars), FOUR));
      return () => formatCounts(said.at, said);
    },
  },
  {
    name: 'a chart, read',
    bars: 1000,
    timed: reading(
      (bars) => '| C G7 / Am7/E '.repeat(bars),
      (text) => parseChartBars(text, FOUR),
    ),
  },
  {
    name: 'a chart of one bar to a line, read',
    bars: 1000,
    timed: reading(
      (bars) => 'F♯m7♭5 / B7 /\n'.repeat(bars),
      (text) => parseChartBars(text, FOUR),
    ),
  },
  {
    name: 'a chart, written',
    bars: 1000,
    timed: (bars) => {
      const chart = valueOf(parseChartBars('| C G7 / Am7/E '.repeat(bars), FOUR));
      return () => formatChartBars(chart, FOUR);
    },
  },
];

function reading(
  textOf: (bars: number) => string,
  read: (text: string) => Result<unknown, unknown>,
) {
  return (bars: number) => {
    const text = textOf(bars);
    valueOf(read(text));
    return () => read(text);
  };
}

/** The shortest of several times, in milliseconds. */
function shortestMs(act: () => unknown): number {
  return Math.min(
    ...Array.from({ length: 7 }, () => {
      const start = performance.now();
      act();
      return performance.now() - start;
    }),
  );
}

it.each(READINGS)('$name: a text $bars bars and eight times as long', ({ name, bars, timed }) => {
  const short = shortestMs(timed(bars));
  const long = shortestMs(timed(LONGER * bars));
  const growth = long / short;
  console.log(
    `${name}: ${bars} bars ${short.toFixed(2)} ms, ${LONGER * bars} bars ${long.toFixed(2)} ms, ${growth.toFixed(1)} times`,
  );
  expect(growth).toBeLessThan(MOST_UNEVEN * LONGER);
});
