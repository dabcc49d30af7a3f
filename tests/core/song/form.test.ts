import { describe, expect, it } from 'vitest';
import { formatChartBars } from '../../../src/core/song/chart.ts';
import {
  ownChart,
  playedChart,
  sectionBars,
  unfoldForm,
  uniqueMusic,
} from '../../../src/core/song/form.ts';
import type { OtherEnding, Section } from '../../../src/core/song/song.ts';
import {
  meter,
  otherEnding,
  section,
  slots,
  slotsOfTicks,
  song,
  withEndings,
} from '../../support/music.ts';

const verse = section('verse', { slots: slotsOfTicks(1920, 1920) });
const waltz = section('waltz', { meter: meter('3/4'), slots: slotsOfTicks(1440) });

describe('the bars of a section', () => {
  it('follow from the length of its slots and its meter', () =>
    expect(
      sectionBars(section('a', { meter: meter('6/8'), slots: slotsOfTicks(2880, 1440) })),
    ).toEqual([0, 1440, 2880].map((startTick) => ({ startTick, meter: meter('6/8') }))));

  it('take another meter where the section says so, for that bar only', () => {
    const bars = sectionBars(
      section('a', {
        barMeters: [{ bar: 1, meter: meter('2/4') }],
        slots: slotsOfTicks(1920, 960, 1920),
      }),
    );
    expect(bars.map((bar) => [bar.startTick, bar.meter.beats])).toEqual([
      [0, 4],
      [1920, 2],
      [2880, 4],
    ]);
  });

  it('are none where there are no slots', () => expect(sectionBars(section('a'))).toEqual([]));

  it('must be filled: the error names the section', () =>
    expect(() => sectionBars(section('bridge', { slots: slotsOfTicks(1920, 480) }))).toThrow(
      '“bridge” end 1440 ticks before a bar does',
    ));
});

describe('unfolding the form', () => {
  it('plays a section that returns again and counts its returns', () => {
    const bars = unfoldForm(song([verse, waltz], 'verse waltz verse'));
    expect(bars.map((b) => [b.startTick, b.entry, b.sectionId, b.repeat, b.barInSection])).toEqual([
      [0, 0, 'verse', 0, 0],
      [1920, 0, 'verse', 0, 1],
      [3840, 1, 'waltz', 0, 0],
      [5280, 2, 'verse', 1, 0],
      [7200, 2, 'verse', 1, 1],
    ]);
  });

  it('gives no bars without form entries', () => expect(unfoldForm(song([verse], ''))).toEqual([]));

  it('rejects a form that plays a section that is not there', () =>
    expect(() => unfoldForm(song([verse], 'chorus'))).toThrow('not there: chorus'));
});

/** What a section plays that ends otherwise. */
function played(of: Section, replacesBars: number, chart: string): string {
  return formatChartBars(playedChart(of, otherEnding(replacesBars, chart)), of.meter);
}

describe('another ending', () => {
  const strain = section('strain', { slots: slots('| C | F | / | G |') });

  it.each([
    [1, '| Am |', '| C | F | / | Am |'],
    [1, '| Am / G / | C |', '| C | F | / | Am / G / | C |'],
    [2, '| Am |', '| C | F | Am |'],
    [0, '| Am |', '| C | F | / | G | Am |'],
    [4, '| Am |', '| Am |'],
    [9, '| Am |', '| Am |'],
  ])('in place of %i bars, %s, plays %s', (bars, chart, whole) =>
    expect(played(strain, bars, chart)).toBe(whole),
  );

  it('keeps the meters of the bars before it and brings its own', () => {
    const mixed = section('mixed', {
      slots: slotsOfTicks(960, 1920, 960),
      barMeters: [0, 2].map((bar) => ({ bar, meter: meter('2/4') })),
    });
    expect(played(mixed, 1, '| G | 3/4 C |')).toBe('| 2/4 C | C | G | 3/4 C |');
  });

  it('tells for each chord where it is written', () => {
    const chart = playedChart(strain, otherEnding(1, '| Am / G / |'));
    expect(chart.slots.map((slot) => [slot.slot, slot.inEnding ?? false])).toEqual([
      [0, false],
      [1, false],
      [0, true],
      [1, true],
    ]);
  });

  it('moves what follows in the form', () => {
    const whole = withEndings(song([strain, waltz], 'strain waltz strain'), {
      0: otherEnding(2, '| Am |'),
    });
    expect(unfoldForm(whole).map((b) => [b.startTick, b.sectionId, b.barInSection])).toEqual([
      [0, 'strain', 0],
      [1920, 'strain', 1],
      [3840, 'strain', 2],
      [5760, 'waltz', 0],
      [7200, 'strain', 0],
      [9120, 'strain', 1],
      [11040, 'strain', 2],
      [12960, 'strain', 3],
    ]);
  });
});

describe('how much music a song is', () => {
  it('counts what is played and what of it is different, in bars and seconds', () => {
    const amounts = uniqueMusic(song([waltz, verse], 'waltz verse verse waltz verse'));
    expect(amounts.whole).toEqual({ bars: 8, seconds: 15 });
    expect(amounts.different).toEqual({ bars: 3, seconds: 5.5 });
  });

  it('lists sections by how often they return, then as they first appear', () => {
    const outro = section('outro', { slots: slotsOfTicks(1920) });
    const amounts = uniqueMusic(song([verse, waltz, outro], 'waltz verse outro verse'));
    expect(amounts.sections.map((s) => [s.name, s.playings, s.bars, s.seconds])).toEqual([
      ['verse', 2, 2, 4],
      ['waltz', 1, 1, 1.5],
      ['outro', 1, 1, 2],
    ]);
  });

  it('counts at the tempo of the felt beat', () => {
    const slow = { tempo: { bpm: 60, beatTicks: 720 } };
    expect(uniqueMusic(song([waltz], 'waltz', slow)).whole.seconds).toBe(2);
  });

  it('counts every ending that is not the same as another', () => {
    const base = song([verse], 'verse verse verse verse');
    const other = otherEnding(1, '| Am | C |');
    const amounts = uniqueMusic(
      withEndings(base, { 1: other, 2: otherEnding(1, '| G |'), 3: { ...other, replacesBars: 2 } }),
    );
    expect(amounts.whole).toEqual({ bars: 2 + 3 + 2 + 2, seconds: 18 });
    expect(amounts.different).toEqual({ bars: 2 + 2 + 1, seconds: 10 });
    expect(amounts.sections).toMatchObject([{ playings: 4, bars: 2, seconds: 4 }]);
  });

  it('does not count the last bars of a section that no playing plays', () => {
    const base = song([verse], 'verse verse');
    const { different } = uniqueMusic(
      withEndings(base, { 0: otherEnding(1, '| G |'), 1: otherEnding(2, '| F |') }),
    );
    expect(different.bars).toBe(1 + 1 + 1);
  });

  it('leaves out what is not played', () => {
    const nothing = { bars: 0, seconds: 0 };
    expect(uniqueMusic(song([verse, waltz], ''))).toEqual({
      whole: nothing,
      different: nothing,
      sections: [],
    });
    expect(uniqueMusic(song([verse, waltz], 'waltz')).different.bars).toBe(1);
  });
});

describe('a section’s own chart', () => {
  const written = section('verse', { slots: slots('| C | F | G | Am |') });
  const barsOf = (form: readonly (OtherEnding | undefined)[]) =>
    sectionBars(
      ownChart(
        written,
        form.map((ending, i) => ({
          id: `entry ${i}`,
          sectionId: 'verse',
          ...(ending ? { ending } : {}),
        })),
      ),
    ).length;

  it.each([
    ['is whole where a playing ends as it is written', [undefined, otherEnding(2, '| C |')], 4],
    [
      'goes as far as the longest playing',
      [otherEnding(3, '| C |'), otherEnding(1, '| C | C | C |')],
      3,
    ],
    ['is nothing where an ending takes the place of all', [otherEnding(4, '| C |')], 0],
    ['is whole where it is not played', [], 4],
  ])('%s', (_, form, bars) => expect(barsOf(form)).toBe(bars));
});
