import { describe, expect, it } from 'vitest';
import type { Project } from '../../../src/core/project.ts';
import { formatChartBars, parseChartBars } from '../../../src/core/song/chart.ts';
import {
  pinVoicing,
  setChord,
  setSectionChart,
  unpinVoicing,
} from '../../../src/state/edits/chart.ts';
import { chord, meter, section, slots, song, valueOf } from '../../support/music.ts';
import { project } from '../../support/project.ts';

const PINNED = { left: [36], right: [60, 64, 67] };

function withChart(chart: string): Project {
  return project({ song: song([section('verse', { slots: slots(chart) })], 'verse') });
}

function verseOf({ song: { sections } }: Project) {
  const verse = sections[0];
  if (!verse) throw new Error('no section');
  return verse;
}

/** The verse's chart as text, in its own meter. */
function chartOf(of: Project): string {
  return formatChartBars(verseOf(of), verseOf(of).meter);
}

/** Which slots of the verse are pinned, by place. */
function pinnedSlots(of: Project): number[] {
  return verseOf(of).slots.flatMap((slot, i) => (slot.fixedKeys ? [i] : []));
}

function typed(chart: string) {
  const read = valueOf(parseChartBars(chart, meter('4/4')));
  return setSectionChart('verse', read.slots, read.barMeters);
}

describe('setting a chart', () => {
  it('replaces the chords and the bars of another meter', () => {
    const after = typed('| Am / D / | 2/4 G | C |')(withChart('| C | F |'));
    expect(chartOf(after)).toBe('| Am / D / | 2/4 G | C |');
    expect(verseOf(after).barMeters).toEqual([{ bar: 1, meter: meter('2/4') }]);
  });

  it.each([
    ['a chord in the middle is another', '| C | F | G | C |', '| C | Dm | G | C |', [0, 2, 3]],
    ['chords are added in the middle', '| C | F | G |', '| C | F | Am | G |', [0, 1, 3]],
    ['chords are taken out', '| C | F | G | C |', '| C | C |', [0, 1]],
    ['only the lengths change', '| C | F | G |', '| C / F / | G |', [0, 1, 2]],
    ['every chord is another', '| C | F |', '| D | E |', []],
    ['one of alike chords goes', '| C | C | C |', '| C | C |', [0, 1]],
  ])('keeps pinned voicings around what is new when %s', (_, before, after, expected) => {
    const start = withChart(before);
    const pinned = verseOf(start).slots.reduce(
      (of, _slot, i) => pinVoicing('verse', i, PINNED)(of),
      start,
    );
    expect(pinnedSlots(typed(after)(pinned))).toEqual(expected);
  });

  it('is nothing where the chords do not fill the bars of the section', () => {
    const before = withChart('| C | F |');
    const inThree = slots('| C | F |', '3/4');
    expect(setSectionChart('verse', inThree, [])(before)).toBe(before);
  });

  it('stays the very same where the chart says what it said, or there is no such section', () => {
    const before = withChart('| C | F |');
    expect(typed('| C | F |')(before)).toBe(before);
    expect(setSectionChart('nowhere', slots('| D |'), [])(before)).toBe(before);
  });
});

describe('one chord', () => {
  const before = withChart('| C / F / | F | G |');

  it('becomes another for as long, at its own place only', () => {
    expect(chartOf(setChord('verse', 1, chord('Dm7'))(before))).toBe('| C / Dm7 / | F | G |');
    expect(chartOf(setChord('verse', 3, 'no-chord')(before))).toBe('| C / F / | F | N.C. |');
  });

  it('loses the voicing that was pinned for the old one', () => {
    const pinned = pinVoicing('verse', 1, PINNED)(before);
    expect(pinnedSlots(setChord('verse', 1, chord('Dm7'))(pinned))).toEqual([]);
    expect(setChord('verse', 1, chord('F'))(pinned)).toBe(pinned);
  });

  it('is pinned with its keys from low to high, and let go again', () => {
    const pinned = pinVoicing('verse', 2, { left: [43, 31], right: [67, 60, 64] })(before);
    expect(verseOf(pinned).slots[2]?.fixedKeys).toEqual({ left: [31, 43], right: [60, 64, 67] });
    expect(pinnedSlots(pinned)).toEqual([2]);
    expect(unpinVoicing('verse', 2)(pinned)).toEqual(before);
  });

  it.each([
    ['set where there is no slot', setChord('verse', 9, chord('C'))],
    ['set in a section that is not there', setChord('nowhere', 0, chord('D'))],
    ['set to what it is', setChord('verse', 0, chord('C'))],
    ['pinned where there is no slot', pinVoicing('verse', -1, PINNED)],
    ['let go where nothing is pinned', unpinVoicing('verse', 0)],
  ])('leaves the very same project when %s', (_, edit) => expect(edit(before)).toBe(before));

  it('is not pinned where there is no chord to hold', () => {
    const silent = withChart('| N.C. | C |');
    expect(pinVoicing('verse', 0, PINNED)(silent)).toBe(silent);
  });
});
