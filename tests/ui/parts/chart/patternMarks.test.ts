import { expect, it } from 'vitest';
import type { FormEntry } from '../../../../src/core/song/song.ts';
import { patternMarks } from '../../../../src/ui/parts/chart/patternMarks.ts';
import { otherEnding, section, slots } from '../../../support/music.ts';
import { pattern } from '../../../support/patterns.ts';

const PATTERNS = [
  pattern('4/4', { left: 'R---' }, { id: 'a', name: 'Ballad' }),
  pattern('4/4', { left: 'R---' }, { id: 'b', name: 'Backbeat' }),
];
const VERSE = section('verse', { slots: slots('| C | F | G | C |'), patternId: 'a' });
const CHANGING = { ...VERSE, patternChanges: [{ bar: 2, patternId: 'b' }] };

function entry(parts: Partial<FormEntry> = {}): FormEntry {
  return { id: 'e', sectionId: 'verse', ...parts };
}

function marked(...[of, playing]: [typeof VERSE, FormEntry | undefined]) {
  const { own, ending } = patternMarks(of, playing, PATTERNS);
  return { own: Object.fromEntries(own), ending: Object.fromEntries(ending) };
}

it('marks nothing where the section plays one pattern throughout, which its heading says', () =>
  expect(marked(VERSE, entry())).toEqual({ own: {}, ending: {} }));

it('marks the bars where another pattern begins, and what is played before', () => {
  expect(marked(CHANGING, undefined).own).toEqual({ 0: 'Ballad', 2: 'Backbeat' });
  expect(marked({ ...VERSE, patternChanges: [{ bar: 3 }] }, entry()).own).toEqual({
    0: 'Ballad',
    3: 'hands rest',
  });
});

it('marks what the playing plays that is looked at', () => {
  expect(marked(CHANGING, entry({ patternId: 'b' })).own).toEqual({ 0: 'Backbeat' });
  expect(marked(CHANGING, entry({ patternChanges: [] })).own).toEqual({});
});

it('marks bars of another ending from the ending’s own first bar', () =>
  expect(
    marked(
      VERSE,
      entry({
        ending: otherEnding(2, '| G | G | C |'),
        patternChanges: [{ bar: 1, patternId: 'b' }, { bar: 3 }],
      }),
    ),
  ).toEqual({ own: { 0: 'Ballad', 1: 'Backbeat' }, ending: { 1: 'hands rest' } }));
