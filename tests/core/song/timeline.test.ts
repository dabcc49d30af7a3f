import { describe, expect, it } from 'vitest';
import {
  barAt,
  chordAt,
  sectionAt,
  tempoMapOf,
  timelineOf,
} from '../../../src/core/song/timeline.ts';
import { secondsAt } from '../../../src/core/time/tempoMap.ts';
import {
  meter,
  otherEnding,
  section,
  slotsOfTicks,
  song,
  withEndings,
} from '../../support/music.ts';

const verse = section('verse', { slots: slotsOfTicks(1920, 960, 960), patternId: 'walk' });
const waltz = section('waltz', { meter: meter('3/4'), slots: slotsOfTicks(1440) });
const played = timelineOf(song([verse, waltz], 'verse waltz verse'));

describe('the timeline', () => {
  it('lays chords end to end, each with its section and its place there', () =>
    expect(played.chords.map((c) => [c.startTick, c.endTick, c.section, c.slot])).toEqual([
      [0, 1920, 0, 0],
      [1920, 2880, 0, 1],
      [2880, 3840, 0, 2],
      [3840, 5280, 1, 0],
      [5280, 7200, 2, 0],
      [7200, 8160, 2, 1],
      [8160, 9120, 2, 2],
    ]));

  it('lays sections end to end with their number of bars and their return', () => {
    expect(played.sections.map((s) => [s.name, s.startTick, s.endTick, s.bars, s.repeat])).toEqual([
      ['verse', 0, 3840, 2, 0],
      ['waltz', 3840, 5280, 1, 0],
      ['verse', 5280, 9120, 2, 1],
    ]);
    expect(played.lengthTicks).toBe(9120);
  });

  it('takes the pattern of the return before that of the section', () => {
    const base = song([verse, waltz], 'verse verse waltz');
    const form = base.form.map((entry, i) => (i === 1 ? { ...entry, patternId: 'run' } : entry));
    expect(timelineOf({ ...base, form }).sections.map((s) => s.patternId)).toEqual([
      'walk',
      'run',
      undefined,
    ]);
  });

  it('keeps the hands that are fixed for a chord', () => {
    const fixedKeys = { left: [36], right: [60, 64, 67] };
    const slots = slotsOfTicks(1920).map((slot) => ({ ...slot, fixedKeys }));
    expect(timelineOf(song([section('a', { slots })], 'a')).chords[0]?.fixedKeys).toBe(fixedKeys);
  });

  it('plays a return with its own ending', () => {
    const whole = song([verse, waltz], 'verse verse waltz');
    const { chords, sections, bars, lengthTicks } = timelineOf(
      withEndings(whole, { 1: otherEnding(1, '| Am | C |') }),
    );
    expect(sections.map((s) => [s.startTick, s.endTick, s.bars])).toEqual([
      [0, 3840, 2],
      [3840, 9600, 3],
      [9600, 11040, 1],
    ]);
    expect(chords.slice(3, 6).map((c) => [c.startTick, c.endTick, c.slot, c.inEnding])).toEqual([
      [3840, 5760, 0, undefined],
      [5760, 7680, 0, true],
      [7680, 9600, 1, true],
    ]);
    expect(bars.map((b) => b.barInSection)).toEqual([0, 1, 0, 1, 2, 0]);
    expect(lengthTicks).toBe(11040);
  });

  it('is empty without form entries', () =>
    expect(timelineOf(song([verse], ''))).toEqual({
      bars: [],
      chords: [],
      sections: [],
      lengthTicks: 0,
    }));
});

describe('looking up a tick', () => {
  it.each([
    [0, 0],
    [1919, 0],
    [1920, 1],
    [5279, 3],
    [5280, 4],
    [9119, 6],
  ])('finds at tick %i chord %i', (tick, chord) =>
    expect(chordAt(played, tick)).toBe(played.chords[chord]),
  );

  it.each([-1, 9120, 20000])('finds nothing at tick %i, outside the timeline', (tick) =>
    expect([chordAt(played, tick), barAt(played, tick), sectionAt(played, tick)]).toEqual([
      undefined,
      undefined,
      undefined,
    ]),
  );

  it('finds bar and section', () => {
    expect(barAt(played, 5279)).toBe(played.bars[2]);
    expect(barAt(played, 7200)).toBe(played.bars[4]);
    expect(sectionAt(played, 3840)).toBe(played.sections[1]);
  });

  it('skips a section without chords, which takes no time', () => {
    const withEmpty = timelineOf(song([section('empty'), waltz], 'empty waltz'));
    expect(sectionAt(withEmpty, 0)?.name).toBe('waltz');
  });
});

it('plays the whole song at the tempo of its felt beat', () => {
  const slow = song([waltz], 'waltz', { tempo: { bpm: 60, beatTicks: 720 } });
  expect(secondsAt(tempoMapOf(slow), 1440)).toBe(2);
});
