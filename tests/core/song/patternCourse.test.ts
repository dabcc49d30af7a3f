import { describe, expect, it } from 'vitest';
import { playedPatterns } from '../../../src/core/song/form.ts';
import {
  movedCourse,
  patternCourse,
  patternIdAt,
  withoutChangeAt,
  withPatternFrom,
} from '../../../src/core/song/patternCourse.ts';
import type { FormEntry } from '../../../src/core/song/song.ts';
import { otherEnding, section, slots } from '../../support/music.ts';

const AB = patternCourse({ patternId: 'a', patternChanges: [{ bar: 4, patternId: 'b' }] });

describe('a course of patterns', () => {
  it('begins with the first bar, where nothing is said with a rest', () => {
    expect(patternCourse({})).toEqual([{ bar: 0 }]);
    expect(AB).toEqual([
      { bar: 0, patternId: 'a' },
      { bar: 4, patternId: 'b' },
    ]);
  });

  it('leaves out what is played anyway and what lies behind the last bar', () =>
    expect(
      patternCourse(
        {
          patternId: 'a',
          patternChanges: [{ bar: 2, patternId: 'a' }, { bar: 4 }, { bar: 8, patternId: 'b' }],
        },
        8,
      ),
    ).toEqual([{ bar: 0, patternId: 'a' }, { bar: 4 }]));

  it.each([
    [0, 'a'],
    [3, 'a'],
    [4, 'b'],
    [7, 'b'],
  ])('plays in bar %i the last pattern that began', (bar, id) =>
    expect(patternIdAt(AB, bar)).toBe(id),
  );

  it('takes a pattern or a rest from a bar on, up to the next change', () => {
    expect(withPatternFrom(AB, 2, 'c')).toEqual([
      { bar: 0, patternId: 'a' },
      { bar: 2, patternId: 'c' },
      { bar: 4, patternId: 'b' },
    ]);
    expect(withPatternFrom(AB, 4, undefined)).toEqual([{ bar: 0, patternId: 'a' }, { bar: 4 }]);
    expect(withPatternFrom(AB, 0, 'b')).toEqual([{ bar: 0, patternId: 'b' }]);
    expect(withPatternFrom(AB, 4, 'a')).toEqual([{ bar: 0, patternId: 'a' }]);
  });

  it('goes on where a change is taken away, but keeps what it begins with', () => {
    expect(withoutChangeAt(AB, 4)).toEqual([{ bar: 0, patternId: 'a' }]);
    expect(withoutChangeAt(AB, 0)).toEqual(AB);
  });

  it('moves its changes with their bars, the later one winning a bar, and loses those behind the end', () => {
    const by = (from: number, step: number) => (bar: number) => (bar >= from ? bar + step : bar);
    expect(movedCourse(AB, by(2, 1), 9)).toEqual([
      { bar: 0, patternId: 'a' },
      { bar: 5, patternId: 'b' },
    ]);
    expect(movedCourse(AB, by(5, -1), 4)).toEqual([{ bar: 0, patternId: 'a' }]);
    const early = patternCourse({ patternId: 'a', patternChanges: [{ bar: 1, patternId: 'b' }] });
    expect(movedCourse(early, by(1, -1), 7)).toEqual([{ bar: 0, patternId: 'b' }]);
  });
});

describe('a playing of a section of four bars that changes to b in bar 3', () => {
  const verse = section('verse', {
    slots: slots('| C | F | G | C |'),
    patternId: 'a',
    patternChanges: [{ bar: 2, patternId: 'b' }],
  });
  const played = (parts: Partial<FormEntry>) =>
    playedPatterns(verse, { id: 'e', sectionId: 'verse', ...parts }).map(
      ({ bar, patternId }) => `${bar + 1}:${patternId ?? 'rest'}`,
    );

  it.each<[string, Partial<FormEntry>, string[]]>([
    ['plays what the section plays', {}, ['1:a', '3:b']],
    ['plays a pattern of its own throughout', { patternId: 'c' }, ['1:c']],
    ['plays changes of its own instead', { patternChanges: [{ bar: 3 }] }, ['1:a', '4:rest']],
    ['plays no change where its own are none', { patternChanges: [] }, ['1:a']],
    [
      'begins with its own and changes as it says',
      { patternId: 'c', patternChanges: [{ bar: 1, patternId: 'a' }] },
      ['1:c', '2:a'],
    ],
    [
      'goes on with what was begun through another ending',
      { ending: otherEnding(1, '| G | C |') },
      ['1:a', '3:b'],
    ],
    [
      'does not change in a bar that its ending replaces',
      { ending: otherEnding(2, '| G | C |') },
      ['1:a'],
    ],
    [
      'may change in its other ending',
      { ending: otherEnding(2, '| G | C |'), patternChanges: [{ bar: 3, patternId: 'c' }] },
      ['1:a', '4:c'],
    ],
  ])('%s', (_, parts, expected) => expect(played(parts)).toEqual(expected));
});
