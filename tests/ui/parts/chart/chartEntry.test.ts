import { describe, expect, it } from 'vitest';
import { formatChartBars, parseChartBars } from '../../../../src/core/song/chart.ts';
import { withBarsWritten } from '../../../../src/ui/parts/chart/barsWritten.ts';
import { readCellText } from '../../../../src/ui/parts/chart/cellText.ts';
import { chartBars, chartLines } from '../../../../src/ui/parts/chart/chartLayout.ts';
import { cellMoved } from '../../../../src/ui/parts/chart/gridMoves.ts';
import { chord, errorOf, majorKey, meter, section, valueOf } from '../../../support/music.ts';

function charted(chart: string) {
  return section('verse', valueOf(parseChartBars(chart, meter('4/4'))));
}

const read = (text: string) => readCellText(text, meter('4/4'), majorKey('D'));

const written = (from: string, bar: number, bars: string) => {
  const verse = charted(from);
  const chart = valueOf(parseChartBars(bars, meter('4/4')));
  return formatChartBars(withBarsWritten(verse, bar, chart), meter('4/4'));
};

describe('what is typed into a cell', () => {
  it('is a chord by symbol, numeral or number', () => {
    for (const text of ['Bm7', ' Bm7 ', 'bm7', 'vi7', '6-7'])
      expect(valueOf(read(text))).toEqual({ kind: 'chord', chord: chord('Bm7') });
  });

  it('lets the chord before go on where nothing or a slash is typed', () => {
    expect(valueOf(read(''))).toEqual({ kind: 'go-on' });
    expect(valueOf(read(' / '))).toEqual({ kind: 'go-on' });
  });

  it('is no chord where N.C. is typed', () => {
    expect(valueOf(read('n.c.'))).toEqual({ kind: 'chord', chord: 'no-chord' });
  });

  it('is bars where a line of a chart is pasted', () => {
    const entry = valueOf(read('| D / A / | Bm G |'));
    expect(entry.kind === 'bars' && formatChartBars(entry.chart, meter('4/4'))).toBe(
      '| D / A / | Bm / G / |',
    );
  });

  it('is an error of the text as typed otherwise', () => {
    expect(errorOf(read('hm7'))).toMatchObject({ kind: 'no-root', text: 'hm7' });
    expect(errorOf(read('| D | % G |'))).toMatchObject({ kind: 'repeat-with-chords', bar: 2 });
  });
});

describe('bars written over a chart', () => {
  it('replace as many bars as they are', () => {
    expect(written('| C | D | E | F |', 1, '| G | A |')).toBe('| C | G | A | F |');
  });

  it('are added beyond the end', () => {
    expect(written('| C | D |', 1, '| G | A | B |')).toBe('| C | G | A | B |');
  });

  it('bring their meters and leave those of the other bars', () => {
    expect(written('| 2/4 C | D | 3/4 E |', 1, '| 6/8 G |')).toBe('| 2/4 C | 6/8 G | 3/4 E |');
  });

  it('begin anew what a chord held before them', () => {
    expect(written('| C | / | / |', 1, '| G |')).toBe('| C | G | C |');
  });
});

describe('keys in the chart', () => {
  const bars = chartBars(charted('| C | D | E | 2/4 F | G |'));
  const lines = chartLines(bars, ['C', 'D', 'E', 'F', 'G'], 400);
  const cells = bars.flatMap((bar) => bar.cells);
  const from = (index: number, key: string, ctrlKey = false) => {
    const moved = cellMoved(lines, cells[index]!, { key, ctrlKey });
    return moved && cells.indexOf(moved);
  };

  it('go from beat to beat, over the end of a line, and stop at the edges', () => {
    expect(from(0, 'ArrowRight')).toBe(1);
    expect(from(7, 'ArrowRight')).toBe(8);
    expect(from(0, 'ArrowLeft')).toBe(0);
    expect(from(17, 'ArrowRight')).toBe(17);
  });

  it('go to the line above and below, as far into it as it reaches', () => {
    expect(from(1, 'ArrowDown')).toBe(9);
    expect(from(7, 'ArrowDown')).toBe(13);
    expect(from(15, 'ArrowUp')).toBe(9);
    expect(from(2, 'ArrowUp')).toBe(2);
  });

  it('go to the ends of the line, and with Control of the chart', () => {
    expect(from(9, 'Home')).toBe(8);
    expect(from(9, 'End')).toBe(13);
    expect(from(9, 'Home', true)).toBe(0);
    expect(from(9, 'End', true)).toBe(17);
  });

  it('do nothing else', () => {
    expect(from(0, 'x')).toBeUndefined();
  });
});
