import { describe, expect, it } from 'vitest';
import { patternInMeter, patternsThatFit } from '../../../src/core/rhythm/fittedPattern.ts';
import type { Pattern } from '../../../src/core/rhythm/pattern.ts';
import { patternForBar } from '../../../src/core/rhythm/patternAt.ts';
import { realise } from '../../../src/core/rhythm/realise.ts';
import { parseChartBars } from '../../../src/core/song/chart.ts';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import { meter, section, song, valueOf } from '../../support/music.ts';
import { noteLines, pattern, plainVoicings, source, ticksOf } from '../../support/patterns.ts';

const FOUR = pattern('4/4', { left: 'R---5-5-', right: '--C---C-' });

const leftOf = (fitted: Pattern | undefined) => fitted?.left.map(({ at, length }) => [at, length]);

describe('a pattern in a bar of another meter', () => {
  it('is its beginning where the bar is shorter', () => {
    const fitted = patternInMeter(FOUR, meter('2/4'));
    expect(leftOf(fitted)).toEqual([[0, 960]]);
    expect(fitted).toMatchObject({ bars: 1, divisions: [2, 2], meter: meter('2/4') });
    expect(leftOf(patternInMeter(FOUR, meter('3/4')))).toEqual([
      [0, 960],
      [960, 480],
    ]);
  });

  it('begins again where the bar is longer', () => {
    const fitted = patternInMeter(FOUR, meter('5/4'));
    expect(ticksOf(fitted?.left ?? [])).toEqual([0, 960, 1440, 1920]);
    expect(fitted?.divisions).toEqual([2, 2, 2, 2, 2]);
    expect(leftOf(patternInMeter(FOUR, meter('5/4')))?.at(-1)).toEqual([1920, 480]);
  });

  it('takes its first bar alone, its band with it, and no ending', () => {
    const grid = {
      meter: meter('4/4'),
      bars: 2,
      divisions: Array.from({ length: 8 }, () => 2 as const),
    };
    const two = pattern(
      '4/4',
      { left: 'R-------5-------', ending: { left: 'R-------' } },
      { bars: 2, sources: [source(grid, 'kick', 'x---x---x---x---')] },
    );
    const fitted = patternInMeter(two, meter('3/4'));
    expect(leftOf(fitted)).toEqual([[0, 1440]]);
    expect(ticksOf(fitted?.sources[0]?.strokes ?? [])).toEqual([0, 960]);
    expect(fitted).not.toHaveProperty('ending');
  });

  it('is none where the beats are not alike', () => {
    expect(patternInMeter(FOUR, meter('6/8'))).toBeUndefined();
    expect(patternInMeter(FOUR, meter('7/8'))).toBeUndefined();
    expect(leftOf(patternInMeter(pattern('6/8', { left: 'R--5--' }), meter('9/8')))).toEqual([
      [0, 720],
      [720, 720],
      [1440, 720],
    ]);
  });
});

/** What the left hand plays of `FOUR` over a chart in a meter. */
function played(chart: string, meterText = '4/4', p = FOUR): string[] {
  const charted = valueOf(parseChartBars(chart, meter(meterText)));
  const verse = section('verse', { meter: meter(meterText), ...charted, patternId: p.id });
  const timeline = timelineOf(song([verse], 'verse'));
  const patternAt = patternsThatFit(patternForBar([p], timeline), timeline);
  return noteLines(valueOf(realise(timeline, plainVoicings(timeline), patternAt)), 'left');
}

describe('patterns fitted to a song', () => {
  it('go on through a bar of 2/4 and begin anew after it', () =>
    expect(played('| C | 2/4 G | C |')).toEqual([
      '0+960 36',
      '960+480 43',
      '1440+480 43',
      '1920+960 43',
      '2880+960 36',
      '3840+480 43',
      '4320+480 43',
    ]));

  it('rest in a bar whose beats are not alike', () =>
    expect(played('| C | 6/8 C |')).toEqual(['0+960 36', '960+480 43', '1440+480 43']));

  it('rest in a section that is in another meter throughout', () =>
    expect(played('| C | C |', '3/4')).toEqual([]));
});
