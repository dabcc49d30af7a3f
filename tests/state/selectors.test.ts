import { describe, expect, it } from 'vitest';
import type { Project } from '../../src/core/project.ts';
import type { Note, Part } from '../../src/core/rhythm/note.ts';
import { setChord } from '../../src/state/edits/chart.ts';
import type { Edit } from '../../src/state/edits/edit.ts';
import { setEntryEnding } from '../../src/state/edits/ending.ts';
import { moveFormEntry, renameSection, setWash } from '../../src/state/edits/form.ts';
import { addHit } from '../../src/state/edits/hits.ts';
import { setClick } from '../../src/state/edits/practice.ts';
import { setSectionPattern } from '../../src/state/edits/sectionPatterns.ts';
import { setKey, setTempo, setTitle } from '../../src/state/edits/song.ts';
import { setVoicing } from '../../src/state/edits/voicing.ts';
import {
  type Selector,
  selectBandNotes,
  selectClick,
  selectNotes,
  selector,
  selectPatternAt,
  selectTempoMap,
  selectTimeline,
  selectVoicings,
} from '../../src/state/selectors.ts';
import {
  chord,
  majorKey,
  meter,
  otherEnding,
  section,
  slots,
  song,
  valueOf,
} from '../support/music.ts';
import { pattern, source } from '../support/patterns.ts';
import { project } from '../support/project.ts';

const GRID = { meter: meter('4/4'), bars: 1, divisions: [2, 2, 2, 2] as const };
const GROOVE = pattern(
  '4/4',
  { left: 'R---5---', right: '..C-..C.' },
  { sources: [source(GRID, 'kick', 'x---x---')] },
);
const LIGHT = pattern('4/4', { left: 'R-------', right: 'C-------' }, { id: 'light' });

const BEFORE: Project = project({
  song: song(
    [
      section('verse', { slots: slots('| C | F |'), patternId: 'p' }),
      section('chorus', { slots: slots('| G | C |'), patternId: 'p' }),
    ],
    'verse chorus',
  ),
  patterns: [GROOVE, LIGHT],
});

const SELECTORS = {
  timeline: selectTimeline,
  'tempo map': selectTempoMap,
  voicings: selectVoicings,
  patternAt: selectPatternAt,
  notes: selectNotes,
  band: selectBandNotes,
  click: selectClick,
} as const satisfies Readonly<Record<string, Selector<unknown>>>;

/** The selectors that compute anew after an edit, by name. */
function computedAnew(edit: Edit): string[] {
  const entries = Object.entries<Selector<unknown>>(SELECTORS);
  const before = entries.map(([, select]) => select(BEFORE));
  const after = edit(BEFORE);
  expect(after).not.toBe(BEFORE);
  return entries.flatMap(([name, select], i) => (select(after) === before[i] ? [] : [name]));
}

const FROM_TIMELINE = ['timeline', 'patternAt', 'notes', 'band', 'click'];

describe('what is computed anew', () => {
  it.each<[string, Edit, string[]]>([
    ['the title', setTitle('Other'), []],
    ['the key', setKey(majorKey('G')), []],
    ['the tempo', setTempo(90), ['tempo map']],
    [
      'the rhythm',
      addHit('p', 'right', { at: 0, length: 240, play: ['top'], touch: 'plain', held: true }),
      ['patternAt', 'notes', 'band'],
    ],
    ['the pattern of a section', setSectionPattern('verse', 'light'), FROM_TIMELINE],
    ['the name of a section', renameSection('verse', 'Strophe'), FROM_TIMELINE],
    ['the wash of a section', setWash('verse', 'plum'), FROM_TIMELINE],
    ['the beats that click', setClick({ beats: 'downbeat' }), ['click']],
    ['the level of the click', setClick({ level: 0.1 }), []],
    ['what the hands may do', setVoicing({ bass: 'octave' }), ['voicings', 'notes', 'band']],
  ])('after a change of %s', (_, edit, expected) => expect(computedAnew(edit)).toEqual(expected));

  it.each<[string, Edit]>([
    ['a chord', setChord('verse', 0, chord('Am'))],
    ['the form', moveFormEntry(0, 1)],
    ['the ending of a return', setEntryEnding('entry 1', otherEnding(1, '| G |'))],
  ])('after a change of %s is everything but the tempo', (_, edit) =>
    expect(computedAnew(edit)).toEqual(
      Object.keys(SELECTORS).filter((name) => name !== 'tempo map'),
    ),
  );

  it('is nothing while two projects are asked in turn, and once more after a third', () => {
    let computed = 0;
    const select = selector(
      ({ patterns }) => [patterns],
      ({ patterns }) => {
        computed++;
        return patterns.length;
      },
    );
    const [one, other, third] = [BEFORE, project(), project({ patterns: [] })];
    expect([one, one, other, one, other].map(select)).toEqual([2, 2, 1, 2, 1]);
    expect(computed).toBe(2);
    expect([third, other, one].map(select)).toEqual([0, 1, 2]);
    expect(computed).toBe(4);
  });
});

/** Where the notes of a part start, each tick once. */
function startsOf(part: Part, notes: readonly Note[]): number[] {
  return [...new Set(notes.filter((note) => note.part === part).map((note) => note.startTick))];
}

/** These ticks in each of the four bars. */
function everyBar(...ticks: readonly number[]): number[] {
  return [0, 1, 2, 3].flatMap((bar) => ticks.map((tick) => bar * 1920 + tick));
}

describe('what is selected', () => {
  it('is the song in playing order, at its tempo', () => {
    expect(selectTimeline(BEFORE).sections.map(({ name }) => name)).toEqual(['verse', 'chorus']);
    expect(selectTempoMap(BEFORE)).toEqual([{ tick: 0, tempo: BEFORE.song.tempo }]);
  });

  it('are hands, band and click for every bar', () => {
    const hands = valueOf(selectNotes(BEFORE));
    expect(startsOf('left', hands)).toEqual(everyBar(0, 960));
    expect(startsOf('right', hands)).toEqual(everyBar(480, 1440));
    expect(startsOf('kick', valueOf(selectBandNotes(BEFORE)))).toEqual(everyBar(0, 960));
    expect(startsOf('click', selectClick(BEFORE))).toEqual(everyBar(0, 480, 960, 1440));
  });

  it('are rests where the pattern has another meter', () => {
    const waltz = section('waltz', {
      meter: meter('3/4'),
      slots: slots('| C | F |', '3/4'),
      patternId: 'p',
    });
    const mixed = project({
      song: song([...BEFORE.song.sections, waltz], 'verse waltz'),
      patterns: BEFORE.patterns,
    });
    expect(valueOf(selectNotes(mixed)).every((note) => note.startTick < 2 * 1920)).toBe(true);
  });

  it('is the chord that no hands can play, for everything that needs voicings', () => {
    const narrow = setVoicing({ spanSemitones: 1 })(BEFORE);
    for (const select of [selectVoicings, selectNotes, selectBandNotes])
      expect(select(narrow)).toMatchObject({
        ok: false,
        error: { kind: 'nothing-playable', span: { slot: 0, section: 0 } },
      });
  });
});
