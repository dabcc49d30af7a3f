import { describe, expect, it } from 'vitest';
import { formatChart, formatChartBars } from '../../../src/core/song/chart.ts';
import { chordRow, nextTurn, type Pace, withChordRow } from '../../../src/core/song/chordRow.ts';
import { chord, meter, section, slots, slotsOfTicks } from '../../support/music.ts';

function chords(symbols: string) {
  return symbols.split(' ').map(chord);
}

describe('a row of chords', () => {
  it.each<[string, string, Pace, string]>([
    ['Dm7 G7 C', '4/4', 'bar', '| Dm7 | G7 | C |'],
    ['Dm7 G7 C', '4/4', 'half-bar', '| Dm7 / G7 / | C |'],
    ['G7 C', '4/4', 'half-bar', '| G7 / C / |'],
    ['G7 C', '3/4', 'half-bar', '| G7 / C |'],
    ['G7 C', '6/8', 'half-bar', '| G7 C |'],
    ['G7 C', '5/4', 'half-bar', '| G7 / / C / |'],
    ['G7', '4/4', 'half-bar', '| G7 |'],
  ])('%s in %s, a %s each', (symbols, meterText, pace, chart) =>
    expect(formatChart(chordRow(chords(symbols), meter(meterText), pace), meter(meterText))).toBe(
      chart,
    ),
  );
});

describe('a row of chords written over a chart', () => {
  const verse = section('verse', { slots: slots('| C | / / Am / | F | G |') });

  it.each<[number, string, Pace, string]>([
    [0, 'Dm G', 'bar', '| Dm | G | F | G |'],
    [1920, 'Dm G', 'half-bar', '| C | Dm / G / | F | G |'],
    [2880, 'Dm7 G7 C', 'half-bar', '| C | / / Dm7 / | G7 / C / | G |'],
    [3840, 'Dm7 G7 C', 'bar', '| C | / / Am / | Dm7 | G7 | C |'],
    [480, 'E', 'bar', '| C E / / | C / Am / | F | G |'],
    [7200, 'G7 C', 'half-bar', '| C | / / Am / | F | G / / G7 | C |'],
  ])('from tick %i on: %s, a %s each', (tick, symbols, pace, chart) =>
    expect(formatChartBars(withChordRow(verse, tick, chords(symbols), pace), verse.meter)).toBe(
      chart,
    ),
  );

  it('follows bars of another meter', () => {
    const mixed = section('mixed', {
      slots: slotsOfTicks(960, 1920),
      barMeters: [{ bar: 0, meter: meter('2/4') }],
    });
    const written = withChordRow(mixed, 0, chords('F G Am'), 'bar');
    expect(formatChartBars(written, mixed.meter)).toBe('| 2/4 F | G | Am |');
  });
});

it('knows where the next chord can change, and stays at the end', () => {
  const verse = section('verse', { slots: slots('| C | G |') });
  expect(nextTurn(verse, 480, 'half-bar')).toBe(960);
  expect(nextTurn(verse, 960, 'bar')).toBe(1920);
  expect(nextTurn(verse, 1920, 'bar')).toBe(1920);
});
