import { describe, expect, it } from 'vitest';
import { parseChordText } from '../../../../src/core/harmony/chordText.ts';
import { parseChartBars } from '../../../../src/core/song/chart.ts';
import { parseMeter } from '../../../../src/core/time/meter.ts';
import {
  chartSentence,
  chordSymbolSentence,
  meterSentence,
} from '../../../../src/ui/parts/chart/chartMessages.ts';
import { errorOf, majorKey, meter } from '../../../support/music.ts';

const chartProblem = (text: string) => chartSentence(errorOf(parseChartBars(text, meter('4/4'))));
const chordProblem = (text: string) =>
  chordSymbolSentence(errorOf(parseChordText(text, majorKey('C'))));

describe('sentences about charts', () => {
  it('name the bar and the column, counted from 1', () => {
    expect(chartProblem('| C | Hm7 |')).toMatch(/^Bar 2, column 7: “Hm7” does not begin/);
  });

  it('name the line too from the second line on', () => {
    expect(chartProblem('| C |\n| C | % G |')).toMatch(/^Bar 3, line 2, column 7: % repeats/);
  });

  it('say how many beats there are and how many signs', () => {
    expect(chartProblem('| C / / / G |')).toContain('“G” is one too many: the bar has 4 beats');
    expect(chartProblem('| C D E |')).toContain('3 signs for 4 beats');
  });

  it.each([
    ['', 'at least one bar'],
    ['| C | |', 'this bar is empty'],
    ['| / |', 'no chord before'],
    ['| % |', 'no bar before'],
    ['| 2/4 C | % |', 'another meter'],
    ['| 4/5 C D |', 'must be 2, 4, 8 or 16'],
  ])('answer %j with words about it', (text, part) => {
    expect(chartProblem(text)).toContain(part);
  });
});

describe('sentences about chords', () => {
  it.each([
    ['', 'begins with a capital letter from A to G'],
    ['H7', '“H7” does not begin with a note'],
    ['Cmaj7x', 'as far as “Cmaj7”, but not “x”'],
    ['C/H', 'the bass note'],
    ['9', 'names no step of the key'],
    ['V7/x', 'a step of the key'],
  ])('answer %j', (text, part) => {
    expect(chordProblem(text)).toContain(part);
  });
});

describe('sentences about meters', () => {
  it.each([
    ['four', 'is no meter'],
    ['4/5', 'must be 2, 4, 8 or 16'],
    ['7/8 (2+2)', 'do not add up to 7'],
  ])('answer %j', (text, part) => {
    expect(meterSentence(errorOf(parseMeter(text)))).toContain(part);
  });
});

it('says of a chart that is too long how long it is and how long it may be', () => {
  expect(chartProblem('C\n'.repeat(10_001))).toBe(
    'These are 10,001 bars; a section has 10,000 at the most. Divide it into sections, or leave some out.',
  );
  expect(chartProblem(' '.repeat(1_000_001))).toContain('1,000,001 characters');
});
