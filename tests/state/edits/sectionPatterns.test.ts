import { describe, expect, it } from 'vitest';
import type { Project } from '../../../src/core/project.ts';
import { parseChartBars } from '../../../src/core/song/chart.ts';
import { playingsOf } from '../../../src/core/song/form.ts';
import { patternCourse } from '../../../src/core/song/patternCourse.ts';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import { setSectionChart } from '../../../src/state/edits/chart.ts';
import { setEntryEnding } from '../../../src/state/edits/ending.ts';
import { duplicateSection, setMeter } from '../../../src/state/edits/form.ts';
import { removePattern } from '../../../src/state/edits/pattern.ts';
import {
  clearPatternFrom,
  type PatternPlace,
  playThroughout,
  playVersionIn,
  setEntryPattern,
  setPatternFrom,
  setSectionPattern,
} from '../../../src/state/edits/sectionPatterns.ts';
import { meter, otherEnding, section, slots, song, valueOf } from '../../support/music.ts';
import { pattern } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

const A = pattern('4/4', { left: 'R---' }, { id: 'a', name: 'A' });
const VERSE: PatternPlace = { kind: 'section', id: 'verse' };
const SECOND: PatternPlace = { kind: 'playing', id: 'entry 1' };

/** A verse of four bars on pattern a, played twice. */
const BEFORE = project({
  song: song(
    [section('verse', { slots: slots('| C | F | G | Am |'), patternId: 'a' })],
    'verse verse',
  ),
  patterns: [A, { ...A, id: 'b', name: 'B' }, { ...A, id: 'c', name: 'C' }],
});

/** What each playing plays from which bar on: `1a 3b | 1a`. */
function plays({ song: whole }: Project): string {
  return timelineOf(whole)
    .sections.map((span) =>
      patternCourse(span)
        .map(({ bar, patternId }) => `${bar + 1}${patternId ?? '-'}`)
        .join(' '),
    )
    .join(' | ');
}

const WITH_B = setPatternFrom(VERSE, 2, 'b')(BEFORE);

describe('a pattern from a bar on', () => {
  it('is played in all playings of the section', () => expect(plays(WITH_B)).toBe('1a 3b | 1a 3b'));

  it('lasts until the next change', () =>
    expect(plays(setPatternFrom(VERSE, 1, 'c')(WITH_B))).toBe('1a 2c 3b | 1a 2c 3b'));

  it('can be a rest', () =>
    expect(plays(setPatternFrom(VERSE, 3, undefined)(WITH_B))).toBe('1a 3b 4- | 1a 3b 4-'));

  it('can be that of one playing, which then keeps what the section plays around it', () => {
    const own = setPatternFrom(SECOND, 3, 'c')(WITH_B);
    expect(plays(own)).toBe('1a 3b | 1a 3b 4c');
    expect(plays(setPatternFrom(VERSE, 2, 'c')(own))).toBe('1a 3c | 1a 3b 4c');
  });

  it('from bar 1 is the pattern that the section or the playing begins with', () => {
    expect(plays(setPatternFrom(VERSE, 0, 'c')(WITH_B))).toBe('1c 3b | 1c 3b');
    expect(plays(setPatternFrom(SECOND, 0, 'c')(WITH_B))).toBe('1a 3b | 1c 3b');
  });

  it('is taken away again without a trace', () => {
    expect(clearPatternFrom(VERSE, 2)(WITH_B)).toEqual(BEFORE);
    expect(clearPatternFrom(SECOND, 3)(setPatternFrom(SECOND, 3, 'c')(WITH_B))).toEqual(WITH_B);
  });

  it('can be left out in one playing', () =>
    expect(plays(clearPatternFrom(SECOND, 2)(WITH_B))).toBe('1a 3b | 1a'));

  it.each([
    ['a bar that is not there', setPatternFrom(VERSE, 4, 'b')],
    ['a pattern that is not there', setPatternFrom(VERSE, 2, 'gone')],
    ['what is played there anyway', setPatternFrom(VERSE, 2, 'a')],
    ['a section that is not there', setPatternFrom({ kind: 'section', id: 'x' }, 2, 'b')],
    ['a rest from the first bar of a playing', setPatternFrom(SECOND, 0, undefined)],
    ['no change where none is', clearPatternFrom(VERSE, 2)],
  ])('is nothing for %s', (_, edit) => expect(edit(BEFORE)).toBe(BEFORE));
});

describe('a pattern from the first bar on', () => {
  it('of a section or a playing leaves its changes', () => {
    expect(plays(setSectionPattern('verse', 'c')(WITH_B))).toBe('1c 3b | 1c 3b');
    const own = setPatternFrom(SECOND, 3, 'c')(BEFORE);
    expect(plays(setEntryPattern('entry 1', 'b')(own))).toBe('1a | 1b 4c');
  });

  it('throughout takes its changes away', () => {
    expect(plays(playThroughout(VERSE, 'c')(WITH_B))).toBe('1c | 1c');
    expect(plays(playThroughout(SECOND, 'c')(WITH_B))).toBe('1a 3b | 1c');
  });

  it('is the section’s again where a playing gives up its own', () => {
    const own = setPatternFrom(SECOND, 3, 'c')(WITH_B);
    expect(setEntryPattern('entry 1', undefined)(own)).toEqual(WITH_B);
    expect(playThroughout(SECOND, undefined)(own)).toEqual(WITH_B);
  });
});

describe('a version of a pattern', () => {
  it('is played in some bars, and the pattern itself again after them', () => {
    const edit = playVersionIn(VERSE, { patternId: 'a', bars: [1, 3], endBar: 4 }, 'c');
    expect(plays(edit(BEFORE))).toBe('1a 2c 3a 4c | 1a 2c 3a 4c');
  });

  it('leaves what follows it as it is', () => {
    const edit = playVersionIn(SECOND, { patternId: 'a', bars: [0, 1], endBar: 2 }, 'c');
    expect(plays(edit(WITH_B))).toBe('1a 3b | 1c 3b');
  });
});

describe('changes of the pattern', () => {
  it('go with a pattern that is removed; what was played before goes on', () => {
    const both = setPatternFrom(SECOND, 3, 'b')(WITH_B);
    expect(plays(removePattern('b')(both))).toBe('1a | 1a');
    expect(removePattern('b')(WITH_B).song).toEqual(BEFORE.song);
    expect(plays(removePattern('a')(WITH_B))).toBe('1- 3b | 1- 3b');
  });

  it('are in the copy of a section', () => {
    const copied = duplicateSection('verse', 'copy')(WITH_B);
    expect(plays(copied)).toBe('1a 3b | 1a 3b | 1a 3b');
  });

  const typed = (chart: string) => {
    const read = valueOf(parseChartBars(chart, meter('4/4')));
    return setSectionChart('verse', read.slots, read.barMeters);
  };

  it.each([
    ['a bar is added before them', '| C | F | Dm | G | Am |', '1a 4b'],
    ['a bar is added behind them', '| C | F | G | Dm | Am |', '1a 3b'],
    ['a bar is taken out before them', '| C | G | Am |', '1a 2b'],
    ['their bar is taken out', '| C | F | Am |', '1a 3b'],
    ['only chords are others', '| Dm | Dm | Dm | Dm |', '1a 3b'],
    ['they lie behind the new end', '| D | E |', '1a'],
  ])('stay with their bars where %s', (_, chart, expected) =>
    expect(plays(typed(chart)(WITH_B))).toBe(`${expected} | ${expected}`),
  );

  it('move as is said where the bars are all alike', () => {
    const vamp = typed('| C | C | C | C |')(WITH_B);
    const longer = valueOf(parseChartBars('| C | C | C | C | C |', meter('4/4')));
    const added = setSectionChart('verse', longer.slots, [], { from: 1, by: 1 });
    expect(plays(added(vamp))).toBe('1a 4b | 1a 4b');
    const shorter = valueOf(parseChartBars('| C | C | C |', meter('4/4')));
    const takenOut = setSectionChart('verse', shorter.slots, [], { from: 1, by: -1 });
    expect(plays(takenOut(vamp))).toBe('1a 2b | 1a 2b');
  });

  it('of a playing stay with their bars, those of its other ending with the ending', () => {
    const ended = setEntryEnding('entry 1', otherEnding(1, '| E | A |'))(BEFORE);
    const own = setPatternFrom(SECOND, 4, 'c')(setPatternFrom(SECOND, 1, 'b')(ended));
    expect(plays(own)).toBe('1a | 1a 2b 5c');
    expect(plays(typed('| Dm | C | F | G | Am |')(own))).toBe('1a | 1a 3b 6c');
    expect(plays(typed('| G | Am |')(own))).toBe('1a | 1a 3c');
  });

  it('stay with their bars in another meter, in which a bar of many chords becomes several', () => {
    const many = typed('| C F G Am | F | G | Am |')(WITH_B);
    const inTwo = setMeter('verse', meter('2/4'))(many);
    expect(playingsOf(inTwo.song)[0]?.chart.slots).toHaveLength(7);
    expect(plays(inTwo)).toBe('1a 4b | 1a 4b');
  });
});
