import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chord } from '../../../src/core/harmony/chord.ts';
import { formatChordSymbol } from '../../../src/core/harmony/chordSymbol.ts';
import { formatDegreeNumber } from '../../../src/core/harmony/degreeNumbers.ts';
import type { Key } from '../../../src/core/harmony/key.ts';
import { formatNumeral, numeralOf } from '../../../src/core/harmony/numerals.ts';
import { scaleChordOf } from '../../../src/core/harmony/scaleDegree.ts';
import {
  type Chart,
  formatChart,
  formatChartBars,
  parseChart,
  parseChartBars,
} from '../../../src/core/song/chart.ts';
import { MOST_CHART_CHARACTERS } from '../../../src/core/song/chartText.ts';
import type { ChordSlot } from '../../../src/core/song/song.ts';
import { MOST_BARS } from '../../../src/core/song/songLength.ts';
import { beatLengths } from '../../../src/core/time/meter.ts';
import { anyChord } from '../../support/chords.ts';
import { anyKey } from '../../support/keys.ts';
import { errorOf, majorKey, meter, slots, slotsOfTicks, valueOf } from '../../support/music.ts';

/** Chords with their lengths in ticks: `C 1920, G 960`. */
function written(chart: readonly ChordSlot[]): string {
  return chart
    .map(({ chord, durationTicks }) =>
      [chord === 'no-chord' ? 'N.C.' : formatChordSymbol(chord), durationTicks].join(' '),
    )
    .join(', ');
}

describe('reading a chart', () => {
  it.each([
    ['4/4', '| C |', 'C 1920'],
    ['4/4', '| D / / / | A / G / |', 'D 1920, A 960, G 960'],
    ['4/4', '| C / F G |', 'C 960, F 480, G 480'],
    ['4/4', '| C G |', 'C 960, G 960'],
    ['4/4', '| C | / / G / |', 'C 2880, G 960'],
    ['4/4', '| C | / | G |', 'C 3840, G 1920'],
    ['4/4', '| C | C |', 'C 1920, C 1920'],
    ['4/4', '| C / F G | % |', 'C 960, F 480, G 480, C 960, F 480, G 480'],
    ['4/4', '| C | / / G / | % |', 'C 2880, G 960, C 960, G 960'],
    ['4/4', '| N.C. | C / NC / |', 'N.C. 1920, C 960, N.C. 960'],
    ['4/4', '| C / / / | 2/4 G / | C |', 'C 1920, G 960, C 1920'],
    ['4/4', '| C | 3/4 / / G | / |', 'C 2880, G 2400'],
    ['2/4', '| C G |', 'C 480, G 480'],
    ['3/4', '| C | F / G |', 'C 1440, F 960, G 480'],
    ['5/4', '| C / / F / | G |', 'C 1440, F 960, G 2400'],
    ['7/4', '| C / / / F / / |', 'C 1920, F 1440'],
    ['6/8', '| C | F G | / C |', 'C 1440, F 720, G 1440, C 720'],
    ['9/8', '| C / G |', 'C 1440, G 720'],
    ['12/8', '| C / F G | Am F |', 'C 1440, F 720, G 720, Am 1440, F 1440'],
    ['7/8', '| C / G | / F / |', 'C 960, G 1200, F 1200'],
    ['3+2+2/8', '| C / G |', 'C 1200, G 480'],
  ])('in %s: %s', (meterText, text, expected) =>
    expect(written(slots(text, meterText))).toBe(expected),
  );

  it.each([
    ['without outer bar lines', 'C | G / F /'],
    ['on several lines', '| C |\n| G / F / |'],
    ['on several lines without outer bar lines', 'C\nG / F /\n'],
    ['with double bar lines', '|| C || G / F / ||'],
    ['with blank lines and other line ends', '\n\n| C |\r\n\r\n| G / F / |\r\n'],
    ['without spaces at the bar lines', '|C|G / F /|'],
  ])('takes a chart %s', (_, text) => expect(written(slots(text))).toBe('C 1920, G 960, F 960'));

  it('tells which bars have a meter of their own', () => {
    const chart = valueOf(parseChartBars('| C | 2/4 G | 4/4 C | 3+2+2/8 F |', meter('4/4')));
    expect(chart.barMeters).toEqual([
      { bar: 1, meter: meter('2/4') },
      { bar: 3, meter: meter('3+2+2/8') },
    ]);
  });
});

describe('a text that is no chart', () => {
  const noMeter = { kind: 'unit', text: '4/5', unit: 5 };
  it.each([
    ['', { kind: 'empty-chart' }],
    [' \n|\n||', { kind: 'empty-chart' }],
    ['| C | | G |', { kind: 'empty-bar', bar: 2, line: 1, column: 5, at: 5, text: ' ' }],
    ['| C | 2/4 |', { kind: 'empty-bar', bar: 2, line: 1, column: 5, at: 5, text: ' 2/4 ' }],
    [
      '| C F G |',
      {
        kind: 'beats-do-not-fit',
        bar: 1,
        line: 1,
        column: 2,
        at: 2,
        text: 'C F G',
        tokens: 3,
        beats: 4,
      },
    ],
    [
      '| C / |',
      {
        kind: 'beats-do-not-fit',
        bar: 1,
        line: 1,
        column: 2,
        at: 2,
        text: 'C /',
        tokens: 2,
        beats: 4,
      },
    ],
    [
      '| C |\n| C / / / G |',
      {
        kind: 'beats-do-not-fit',
        bar: 2,
        line: 2,
        column: 10,
        at: 16,
        text: 'G',
        tokens: 5,
        beats: 4,
      },
    ],
    [
      '| 2/4 C / G |',
      {
        kind: 'beats-do-not-fit',
        bar: 1,
        line: 1,
        column: 10,
        at: 10,
        text: 'G',
        tokens: 3,
        beats: 2,
      },
    ],
    ['| / | C |', { kind: 'nothing-to-hold', bar: 1, line: 1, column: 2, at: 2, text: '/' }],
    ['| % |', { kind: 'nothing-to-repeat', bar: 1, line: 1, column: 2, at: 2, text: '%' }],
    ['| C | % G |', { kind: 'repeat-with-chords', bar: 2, line: 1, column: 6, at: 6, text: '%' }],
    [
      '| C | 2/4 % |',
      { kind: 'repeat-of-other-meter', bar: 2, line: 1, column: 10, at: 10, text: '%' },
    ],
    [
      '| C | 4/5 G |',
      { kind: 'bad-meter', bar: 2, line: 1, column: 6, at: 6, text: '4/5', error: noMeter },
    ],
    [
      'C\nG\n  F / Hm /',
      {
        kind: 'unknown-chord',
        bar: 3,
        line: 3,
        column: 6,
        at: 10,
        text: 'Hm',
        error: { kind: 'no-root', text: 'Hm', at: 0 },
      },
    ],
    [
      '| C | G7x |',
      {
        kind: 'unknown-chord',
        bar: 2,
        line: 1,
        column: 6,
        at: 6,
        text: 'G7x',
        error: { kind: 'unknown-quality', text: 'G7x', at: 2 },
      },
    ],
  ])('%j', (text, error) => expect(errorOf(parseChart(text, meter('4/4')))).toEqual(error));
});

describe('writing a chart', () => {
  it.each([
    ['4/4', '| C | F / G / | / / C / | / | N.C. |'],
    ['6/8', '| C | F G | / C |'],
    ['4/4', '| C | 2/4 G C | 3+2+2/8 F / G | / |'],
  ])('in %s leaves %s as it is', (meterText, text) =>
    expect(formatChartBars(valueOf(parseChartBars(text, meter(meterText))), meter(meterText))).toBe(
      text,
    ),
  );

  it('writes shared beats and repeated bars out', () =>
    expect(formatChart(slots('| C G | % |'), meter('4/4'))).toBe('| C / G / | C / G / |'));

  it('gives no text for no chords', () => expect(formatChart([], meter('4/4'))).toBe(''));

  it('has no way to write a change off the beat or a bar that is not full', () => {
    expect(() => formatChart(slotsOfTicks(240, 1680), meter('4/4'))).toThrow('on a beat');
    expect(() => formatChart(slotsOfTicks(480), meter('4/4'))).toThrow('before a bar does');
  });
});

function inC(text: string): string {
  return written(valueOf(parseChart(text, meter('4/4'), majorKey('C'))));
}

describe('a chart in a key', () => {
  it.each([
    ['| 1 | 5 | 6- | 4 |', 'C 1920, G 1920, Am 1920, F 1920'],
    ['| I / IV V7 | vi |', 'C 960, F 480, G7 480, Am 1920'],
    ['| Dm7 / 5⁷ / | I 5/7 |', 'Dm7 960, G7 960, C 960, G/B 960'],
    ['| 5/7 / / / | 5/4 | 2/4 5/4 1 |', 'G/B 1920, G/F 1920, G/F 480, C 480'],
    ['| N.C. | ♭VII | % |', 'N.C. 1920, B♭ 1920, B♭ 1920'],
  ])('takes symbols, numerals and numbers in any mixture: %s', (text, expected) =>
    expect(inC(text)).toBe(expected),
  );

  it('takes for a meter what is neither a meter nor a chord but written as one', () =>
    expect(errorOf(parseChart('| 1 | 9/99 5 |', meter('4/4'), majorKey('C')))).toMatchObject({
      kind: 'bad-meter',
      bar: 2,
      text: '9/99',
    }));

  it('says where a numeral or number is wrong', () => {
    const error = errorOf(parseChart('| 1 | Vx / 5y / |', meter('4/4'), majorKey('C')));
    expect(error).toMatchObject({
      kind: 'unknown-chord',
      bar: 2,
      column: 6,
      error: { kind: 'unknown-quality', text: 'Vx', at: 1 },
    });
  });

  it('takes numerals and numbers for unknown chords where there is no key', () =>
    expect(errorOf(parseChart('| IV |', meter('4/4')))).toMatchObject({
      kind: 'unknown-chord',
      error: { kind: 'no-root', at: 0 },
    }));
});

const METERS = ['2/4', '3/4', '4/4', '5/4', '7/4', '6/8', '9/8', '12/8', '7/8', '3+2+2/8'].map(
  meter,
);

/** Bars of any meter in a section of another, with a new chord, no chord or nothing at each beat. */
function charts(): fc.Arbitrary<{ chart: Chart; sectionMeter: (typeof METERS)[number] }> {
  const change = fc.option(fc.oneof(anyChord(), fc.constant('no-chord' as const)), {
    nil: undefined,
  });
  const bar = fc
    .constantFrom(...METERS)
    .chain((m) =>
      fc
        .array(change, { minLength: beatLengths(m).length, maxLength: beatLengths(m).length })
        .map((beats) => ({ meter: m, beats })),
    );
  return fc
    .record({
      sectionMeter: fc.constantFrom(...METERS),
      bars: fc.array(bar, { minLength: 1, maxLength: 6 }),
    })
    .map(({ sectionMeter, bars }) => {
      const chart: ChordSlot[] = [];
      for (const { meter: m, beats } of bars)
        for (const [i, ticks] of beatLengths(m).entries()) {
          const last = chart.at(-1);
          const chord = beats[i] ?? (last ? undefined : 'no-chord');
          if (chord) chart.push({ chord, durationTicks: ticks });
          else if (last)
            chart[chart.length - 1] = { ...last, durationTicks: last.durationTicks + ticks };
        }
      const barMeters = bars.flatMap((b, i) =>
        b.meter === sectionMeter ? [] : [{ bar: i, meter: b.meter }],
      );
      return { sectionMeter, chart: { slots: chart, barMeters } };
    });
}

describe('reads back the chart that was written, whatever its meters and changes,', () => {
  const NAMINGS: ReadonlyArray<readonly [string, (chord: Chord, key: Key) => string]> = [
    ['by symbol', formatChordSymbol],
    ['by numeral', (c, key) => formatNumeral(numeralOf(c, key))],
    ['by number', (c, key) => formatDegreeNumber(scaleChordOf(c, key))],
  ];
  it.each(NAMINGS)('%s', (_, nameIn) =>
    fc.assert(
      fc.property(charts(), anyKey(), ({ chart, sectionMeter }, key) => {
        const text = formatChartBars(chart, sectionMeter, (c) => nameIn(c, key));
        expect(valueOf(parseChartBars(text, sectionMeter, key))).toEqual(chart);
      }),
    ),
  );
});

describe('a chord over its own root', () => {
  it.each(['A/A', 'Am7/A', 'C/C', 'C/E'])('%s is written back as it was read', (symbol) => {
    const read = slots(`| ${symbol} |`);
    expect(formatChart(read, meter('4/4'))).toBe(`| ${symbol} |`);
  });

  it.each(['1/1', '5/5', '5/7'])('%s is written back as it was read', (number) => {
    const key = majorKey('C');
    const read = valueOf(parseChart(`| ${number} |`, meter('4/4'), key));
    const naming = (c: Chord) => formatDegreeNumber(scaleChordOf(c, key));
    expect(formatChart(read, meter('4/4'), naming)).toBe(`| ${number} |`);
    expect(slots(formatChart(read, meter('4/4')))).toEqual(read);
  });
});

describe('a chart that is too long', () => {
  it('is refused before it is laid out, with how long it is', () => {
    expect(errorOf(parseChart('C\n'.repeat(MOST_BARS + 1), meter('4/4')))).toEqual({
      kind: 'too-many-bars',
      bars: MOST_BARS + 1,
      most: MOST_BARS,
    });
    expect(errorOf(parseChart(' '.repeat(MOST_CHART_CHARACTERS + 1), meter('4/4')))).toMatchObject({
      kind: 'too-much-text',
      characters: MOST_CHART_CHARACTERS + 1,
    });
  });

  it('may have as many bars as a song has at the most', () =>
    expect(valueOf(parseChart('| C '.repeat(MOST_BARS), meter('4/4')))).toHaveLength(MOST_BARS));
});
