import { describe, expect, it } from 'vitest';
import { parseChartBars } from '../../../../src/core/song/chart.ts';
import {
  CELL_PX,
  CHORD_PX,
  cellAt,
  chartBars,
  chartLines,
  chartPlace,
  chordPx,
  chordSizes,
  roomTicks,
  slotBeats,
} from '../../../../src/ui/parts/chart/chartLayout.ts';
import { meter, section, valueOf } from '../../../support/music.ts';

function barsOf(chart: string, meterText = '4/4') {
  const verse = section('verse', {
    meter: meter(meterText),
    ...valueOf(parseChartBars(chart, meter(meterText))),
  });
  return chartBars(verse);
}

const many = (bars: number) => `| ${Array.from({ length: bars }, () => 'C').join(' | ')} |`;

describe('the cells of a chart', () => {
  it('are the felt beats of every bar, and chords begin in theirs', () => {
    const cells = barsOf('| C / F / | G |').flatMap((bar) => bar.cells);
    expect(cells.map((cell) => cell.slot)).toEqual([0, undefined, 1, undefined, 2, ...Array(3)]);
    expect(cells.map((cell) => cell.sounds)).toEqual([0, 0, 1, 1, 2, 2, 2, 2]);
    expect(cells.flatMap((cell, i) => (cell.isLast ? [i] : []))).toEqual([1, 3, 7]);
  });

  it('are two in 6/8 and of three lengths’ sum in 7/8', () => {
    expect(barsOf('| C |', '6/8')[0]?.cells.map((cell) => cell.lengthTicks)).toEqual([720, 720]);
    expect(barsOf('| C |', '7/8')[0]?.cells.map((cell) => cell.lengthTicks)).toEqual([
      480, 480, 720,
    ]);
  });

  it('print a meter at the first bar and at every change', () => {
    const bars = barsOf('| C | 2/4 G | F | C |');
    expect(bars.map((bar) => bar.printsMeter)).toEqual([true, true, true, false]);
  });

  it('count how many beats each chord lasts, over bar lines too', () => {
    expect(slotBeats(barsOf('| C / / G | / / F / |'))).toEqual([3, 3, 2]);
  });
});

/** How many bars each line has. */
function lineLengths(chart: string, names: readonly string[], widthPx: number): number[] {
  return chartLines(barsOf(chart), names, widthPx).map((line) => line.bars.length);
}

describe('bars to a line', () => {
  const names = Array.from({ length: 8 }, () => 'C');

  it('are four where every cell is wide enough for a finger', () => {
    expect(lineLengths(many(8), names, 16 * CELL_PX.narrowest)).toEqual([4, 4]);
    expect(lineLengths(many(8), names, 16 * CELL_PX.narrowest - 1)).toEqual([2, 2, 2, 2]);
  });

  it('are one on the narrowest screen', () => {
    expect(lineLengths(many(2), names, 200)).toEqual([1, 1]);
  });

  it('are fewer only in the line where long names stand close together', () => {
    const chart = '| C | C | B♭m7♭5/A♭ E♭7♯9 A♭maj7 D♭maj7♯11 | C | C | C | C | C |';
    const long = 'C,C,B♭m7♭5/A♭,E♭7♯9,A♭maj7,D♭maj7♯11,C,C,C,C,C'.split(',');
    expect(lineLengths(chart, long, 720)).toEqual([2, 1, 1, 4]);
  });

  it('keep their scale in a last line that is not full', () => {
    const lines = chartLines(barsOf(many(5)), names, 720);
    expect(lines.map((line) => line.spanTicks)).toEqual([4 * 1920, 4 * 1920]);
  });
});

describe('the size of a chord', () => {
  it('is the usual one where there is room and shrinks no further than the smallest', () => {
    expect(chordPx('C', 200)).toBe(CHORD_PX.usual);
    expect(chordPx('B♭m7♭5', 100)).toBeLessThan(CHORD_PX.usual);
    expect(chordPx('B♭m7♭5', 10)).toBe(CHORD_PX.smallest);
  });

  it('is for the room up to the next change or the end of the line', () => {
    const bars = barsOf('| C / F / | / / / / |');
    const [first, , third] = bars.flatMap((bar) => bar.cells);
    expect(roomTicks({ bars }, first!)).toBe(960);
    expect(roomTicks({ bars }, third!)).toBe(6 * 480);
  });
});

describe('the sizes of a line’s chords', () => {
  it('are one size in each bar, that of its longest name', () => {
    const bars = barsOf('| C / C / | C |');
    const sizes = chordSizes({ bars, spanTicks: 3840 }, ['Cmaj7♯11', 'G', 'C'], 384);
    expect(sizes.get(0)).toBeLessThan(CHORD_PX.usual);
    expect(sizes.get(1)).toBe(sizes.get(0));
    expect(sizes.get(2)).toBe(CHORD_PX.usual);
  });
});

describe('a place on the chart', () => {
  const bars = barsOf('| C | D | E | F | 2/4 G |');
  const lines = chartLines(bars, ['C', 'D', 'E', 'F', 'G'], 800);

  it('is as far across as the tick is into the line, at one scale for all lines', () => {
    expect(chartPlace(lines, 1920)).toEqual({ line: 0, across: 0.25 });
    expect(chartPlace(lines, 4 * 1920 + 480)).toEqual({ line: 1, across: 480 / 7680 });
  });

  it('is nowhere outside the section', () => {
    expect(chartPlace(lines, -1)).toBeUndefined();
    expect(chartPlace(lines, 4 * 1920 + 960)).toBeUndefined();
    expect(cellAt(bars, -0.5)).toBeUndefined();
  });

  it('is in the cell whose beat it falls on', () => {
    expect(cellAt(bars, 479.9)).toMatchObject({ bar: 0, beat: 0 });
    expect(cellAt(bars, 480)).toMatchObject({ bar: 0, beat: 1 });
  });
});
