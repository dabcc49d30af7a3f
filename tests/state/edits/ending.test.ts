import { describe, expect, it } from 'vitest';
import type { Project } from '../../../src/core/project.ts';
import { formatChartBars } from '../../../src/core/song/chart.ts';
import type { OtherEnding } from '../../../src/core/song/song.ts';
import { keysOfHand } from '../../../src/core/voicing/voicing.ts';
import type { Edit } from '../../../src/state/edits/edit.ts';
import {
  clearEntryEnding,
  pinEndingVoicing,
  setEntryEnding,
  unpinEndingVoicing,
} from '../../../src/state/edits/ending.ts';
import { duplicateSection, setMeter } from '../../../src/state/edits/form.ts';
import { selectTimeline, selectVoicings } from '../../../src/state/selectors.ts';
import { meter, otherEnding, section, slots, song, valueOf } from '../../support/music.ts';
import { project } from '../../support/project.ts';

const VERSE = section('verse', { slots: slots('| C | F G | Am |') });
const BEFORE = project({ song: song([VERSE], 'verse verse') });
const SECOND = 'entry 1';

function endingOf(of: Project): OtherEnding | undefined {
  return of.song.form[1]!.ending;
}

describe('another ending of one return', () => {
  it('is set and taken away without touching section and other returns', () => {
    const last = otherEnding(1, '| G | 2/4 C |');
    const after = setEntryEnding(SECOND, last)(BEFORE);
    expect(endingOf(after)).toEqual(last);
    expect(after.song.sections).toBe(BEFORE.song.sections);
    expect(after.song.form[0]).toBe(BEFORE.song.form[0]);
    expect(clearEntryEnding(SECOND)(after)).toEqual(BEFORE);
  });

  it.each([
    [-2, 0],
    [1.4, 1],
    [17, 3],
    [Number.NaN, 0],
  ])('in place of %d bars replaces %i that the section has', (asked, replaced) =>
    expect(
      endingOf(setEntryEnding(SECOND, otherEnding(asked, '| G |'))(BEFORE))?.replacesBars,
    ).toBe(replaced),
  );

  it('does not go into a copy of the section', () => {
    const after = duplicateSection(
      'verse',
      'copy',
    )(setEntryEnding(SECOND, otherEnding(1, '| G |'))(BEFORE));
    expect(after.song.form.map((entry) => [entry.sectionId, entry.ending?.replacesBars])).toEqual([
      ['verse', undefined],
      ['verse', 1],
      ['copy', undefined],
    ]);
  });

  it.each([
    ['3/4', 1, 1, '| G | C |'],
    ['2/4', 2, 2, '| G | C |'],
  ])('goes into %s with its section, in place of the same bars', (to, asked, replaced, chart) => {
    const after = setMeter(
      'verse',
      meter(to),
    )(setEntryEnding(SECOND, otherEnding(asked, '| G | C |'))(BEFORE));
    const last = endingOf(after)!;
    expect(last.replacesBars).toBe(replaced);
    expect(formatChartBars(last, meter(to))).toBe(chart);
  });

  it('replaces as many bars as its section’s bars become', () => {
    const busy = section('verse', { slots: slots('| C | F G Am E |') });
    const before = project({ song: song([busy], 'verse verse') });
    const after = setMeter(
      'verse',
      meter('2/4'),
    )(setEntryEnding(SECOND, otherEnding(1, '| G F Em Dm |'))(before));
    expect(endingOf(after)?.replacesBars).toBe(2);
    expect(formatChartBars(endingOf(after)!, meter('2/4'))).toBe('| G F | Em Dm |');
  });
});

describe('hands pinned in an ending', () => {
  const ended = setEntryEnding(SECOND, otherEnding(1, '| G N.C. |'))(BEFORE);
  const pinned = pinEndingVoicing(SECOND, 0, { left: [43], right: [71, 62, 67] })(ended);
  const fixedKeys = (of: Project) => endingOf(of)?.slots.map((slot) => slot.fixedKeys);

  it('are held from low to high, and let go', () => {
    expect(fixedKeys(pinned)).toEqual([{ left: [43], right: [62, 67, 71] }, undefined]);
    expect(unpinEndingVoicing(SECOND, 0)(pinned)).toEqual(ended);
  });

  it('are the hands that are played there', () => {
    const voiced = valueOf(selectVoicings(pinned));
    const place = selectTimeline(pinned).chords.findIndex(({ inEnding }) => inEnding);
    expect(keysOfHand(voiced[place]!, 'right')).toEqual([62, 67, 71]);
  });

  it('stay where the chords before and after what changed are the same', () => {
    const after = setEntryEnding(SECOND, otherEnding(1, '| G F |'))(pinned);
    expect(fixedKeys(after)?.[0]).toEqual({ left: [43], right: [62, 67, 71] });
  });
});

describe('an edit of an ending that does not apply', () => {
  const ended = setEntryEnding(SECOND, otherEnding(1, '| G |'))(BEFORE);
  it.each<[string, Edit]>([
    ['ends an entry that is not there', setEntryEnding('nowhere', otherEnding(1, '| G |'))],
    ['ends without a chord', setEntryEnding(SECOND, { replacesBars: 1, slots: [], barMeters: [] })],
    ['ends inside a bar', setEntryEnding(SECOND, otherEnding(1, '| G |', '3/4'))],
    ['says the same ending', setEntryEnding(SECOND, otherEnding(1, '| G |'))],
    ['pins an ending that is not there', pinEndingVoicing('entry 0', 0, { left: [], right: [60] })],
    ['pins a chord that is not there', pinEndingVoicing(SECOND, 7, { left: [], right: [60] })],
    ['lets hands go that are not pinned', unpinEndingVoicing(SECOND, 0)],
    ['takes away an ending that is not there', clearEntryEnding('entry 0')],
  ])('%s and leaves the very same project', (_, edit) => expect(edit(ended)).toBe(ended));
});
