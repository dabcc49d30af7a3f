import { describe, expect, it } from 'vitest';
import type { Division, Pattern } from '../../src/core/rhythm/pattern.ts';
import type { OtherEnding } from '../../src/core/song/song.ts';
import { projectFaults } from '../../src/formats/projectFaults.ts';
import {
  meter,
  otherEnding,
  section,
  slots,
  slotsOfTicks,
  song,
  withEndings,
} from '../support/music.ts';
import { pattern, source } from '../support/patterns.ts';
import { project } from '../support/project.ts';

const GRID = { meter: meter('4/4'), bars: 1, divisions: [2, 2, 2, 2] as const };
const GROOVE = pattern(
  '4/4',
  { left: 'R---5---', right: '..C-..C.', ending: { left: 'R---8---' } },
  { sources: [source(GRID, 'kick', 'x---x---')] },
);
const VERSE = section('verse', { slots: slots('| C | F |') });

/** The faults as `kind path`. */
function faultsOf(parts: Parameters<typeof project>[0]): string[] {
  return projectFaults(project(parts)).map(({ kind, path }) => `${kind} ${path}`);
}

function ofPattern(parts: Partial<Pattern>): string[] {
  return faultsOf({ patterns: [{ ...GROOVE, ...parts }] });
}

it('finds nothing in a sound project', () => expect(ofPattern({})).toEqual([]));

describe('the song', () => {
  it('must have a section and a pattern', () => {
    expect(faultsOf({ song: song([], '') })).toEqual(['nothing-left song.sections']);
    expect(faultsOf({ song: song([VERSE], 'verse'), patterns: [] })).toEqual([
      'nothing-left patterns',
    ]);
  });

  it('must have different ids for its sections, form entries and patterns', () => {
    const twice = song([VERSE, VERSE], 'verse verse');
    const form = twice.form.map((entry) => ({ ...entry, id: 'e' }));
    expect(faultsOf({ song: { ...twice, form }, patterns: [GROOVE, GROOVE, GROOVE] })).toEqual([
      'same-id song.sections[1].id',
      'same-id song.form[1].id',
      'same-id patterns[1].id',
      'same-id patterns[2].id',
    ]);
  });

  it('must name sections and patterns that are there', () => {
    const lost = { ...VERSE, patternId: 'gone' };
    expect(faultsOf({ song: song([lost], 'verse bridge') })).toEqual([
      'not-there song.form[1].sectionId',
      'not-there song.sections[0].patternId',
    ]);
  });

  it('must change to patterns that are there, bar after bar', () => {
    const changing = {
      ...VERSE,
      patternChanges: [{ bar: 1, patternId: 'gone' }, { bar: 1 }],
    };
    const returning = song([changing], 'verse');
    const form = returning.form.map((entry) => ({
      ...entry,
      patternChanges: [{ bar: 1 }, { bar: 2, patternId: 'lost' }],
    }));
    expect(faultsOf({ song: { ...returning, form } })).toEqual([
      'out-of-order song.sections[0].patternChanges',
      'not-there song.sections[0].patternChanges[0].patternId',
      'not-there song.form[0].patternChanges[1].patternId',
    ]);
  });

  it.each([
    ['4/4', [1920, 960], false],
    ['4/4', [1920, 1920], true],
    ['6/8', [1440, 1920], false],
    ['4/4', [], true],
  ])('must fill its bars: in %s with slots of %j ticks', (meterText, ticks, fills) => {
    const verse = { ...VERSE, meter: meter(meterText), slots: slotsOfTicks(...ticks) };
    const faults = faultsOf({ song: song([verse], 'verse') });
    expect(faults).toEqual(fills ? [] : ['bars-not-filled song.sections[0].slots']);
  });

  it('must list its bars of another meter in order, which count when bars are filled', () => {
    const inTwo = { bar: 1, meter: meter('2/4') };
    const verse = { ...VERSE, slots: slotsOfTicks(1920, 960), barMeters: [inTwo] };
    expect(faultsOf({ song: song([verse], 'verse') })).toEqual([]);
    const wrong = { ...verse, barMeters: [inTwo, inTwo] };
    expect(faultsOf({ song: song([wrong], 'verse') })).toEqual([
      'out-of-order song.sections[0].barMeters',
    ]);
  });
});

function ofEnding(last: OtherEnding): string[] {
  return faultsOf({ song: withEndings(song([VERSE], 'verse'), { 0: last }) });
}

describe('another ending', () => {
  it('must fill its bars in the meter of its section, with its bars of another meter in order', () => {
    const sound = otherEnding(1, '| 2/4 C | F |');
    expect(ofEnding(sound)).toEqual([]);
    expect(ofEnding(otherEnding(1, '| C |', '3/4'))).toEqual([
      'bars-not-filled song.form[0].ending.slots',
    ]);
    expect(ofEnding({ ...sound, barMeters: [...sound.barMeters, ...sound.barMeters] })).toEqual([
      'out-of-order song.form[0].ending.barMeters',
    ]);
  });
});

describe('a pattern', () => {
  const [first, second] = GROOVE.left;

  it('must have one division for each beat', () =>
    expect(ofPattern({ divisions: [2, 2, 2] })).toEqual([
      'divisions-do-not-fit patterns[0].divisions',
    ]));

  it('must have its hits in order, one to a tick', () => {
    expect(ofPattern({ left: [second!, first!] })).toEqual(['out-of-order patterns[0].left[0]']);
    expect(ofPattern({ left: [first!, first!] })).toEqual(['out-of-order patterns[0].left[0]']);
  });

  it('must have no hit that lasts into the next one, even the first of the next time round', () => {
    expect(ofPattern({ left: [{ ...first!, length: 961 }, second!] })).toEqual([
      'too-long patterns[0].left[0]',
    ]);
    const [early, late] = GROOVE.right;
    expect(ofPattern({ right: [early!, { ...late!, length: 960 }] })).toEqual([]);
    expect(ofPattern({ right: [early!, { ...late!, length: 961 }] })).toEqual([
      'too-long patterns[0].right[1]',
    ]);
  });

  it('must have no hit behind its end, nor behind the one bar of its ending', () => {
    expect(ofPattern({ left: [{ ...first!, at: 1920 }] })).toEqual(['outside patterns[0].left[0]']);
    const ending = { left: [], right: [{ ...GROOVE.right[0]!, at: 1920 }] };
    expect(ofPattern({ ending })).toEqual(['outside patterns[0].ending.right[0]']);
  });

  it('must have as many divisions in its ending as there are beats, if it has any there', () => {
    const ending = { left: [], right: [] };
    const divided = (...divisions: Division[]) => ofPattern({ ending: { ...ending, divisions } });
    expect(divided(2, 2, 2, 3)).toEqual([]);
    expect(divided(2, 2)).toEqual(['divisions-do-not-fit patterns[0].ending.divisions']);
  });

  it('must have sources with ids of their own, whose strokes are in order', () => {
    const [kick] = GROOVE.sources;
    const backwards = { ...kick!, strokes: kick!.strokes.toReversed() };
    expect(ofPattern({ sources: [kick!, backwards] })).toEqual([
      'same-id patterns[0].sources[1].id',
      'out-of-order patterns[0].sources[1].strokes[0]',
    ]);
  });
});
