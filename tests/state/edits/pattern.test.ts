import { describe, expect, it } from 'vitest';
import type { Project } from '../../../src/core/project.ts';
import { endingFills } from '../../../src/core/rhythm/fills.ts';
import type { Division, Pattern } from '../../../src/core/rhythm/pattern.ts';
import { copyBar } from '../../../src/core/rhythm/patternMoves.ts';
import type { Edit } from '../../../src/state/edits/edit.ts';
import {
  addEnding,
  addPattern,
  duplicatePattern,
  PATTERN_BARS,
  removeEnding,
  removePattern,
  renamePattern,
  replaceHands,
  replaceSources,
  setDivision,
  setEnding,
  setPatternBars,
  setPatternMeter,
  setSwing,
} from '../../../src/state/edits/pattern.ts';
import { reworkPattern } from '../../../src/state/edits/variations.ts';
import { meter, section, slots, song } from '../../support/music.ts';
import { hands, pattern, source } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';
import { shelf } from '../../support/shelf.ts';

const GROOVE = pattern('4/4', { left: 'R---5---', right: '..C-..C.' });
const BEFORE = project({ patterns: [GROOVE] });

/** The first pattern of a project after an edit. */
function after(edit: Edit, before: Project = BEFORE): Pattern {
  const found = edit(before).patterns[0];
  if (!found) throw new Error('no pattern');
  return found;
}

function withPattern(one: Pattern): Project {
  return project({ patterns: [one] });
}

describe('the patterns of a project', () => {
  it('are added at the end and copied behind themselves', () => {
    const two = addPattern({ ...GROOVE, id: 'q', name: 'Other' })(BEFORE);
    expect(two.patterns.map(({ id }) => id)).toEqual(['p', 'q']);
    const three = duplicatePattern('p', 'r')(two);
    expect(three.patterns.map(({ id, name }) => [id, name])).toEqual([
      ['p', 'Pattern'],
      ['r', 'Pattern 2'],
      ['q', 'Other'],
    ]);
  });

  it('are removed with every choice of them', () => {
    const verse = section('verse', { slots: slots('| C |'), patternId: 'p' });
    const { form, ...rest } = song([verse], 'verse verse');
    const chosen = project({
      song: { ...rest, form: form.map((entry) => ({ ...entry, patternId: 'p' })) },
      patterns: [GROOVE, { ...GROOVE, id: 'q' }],
      practice: { ...BEFORE.practice, drill: { ...BEFORE.practice.drill, patternId: 'p' } },
    });
    const removed = removePattern('p')(chosen);
    expect(removed.patterns.map(({ id }) => id)).toEqual(['q']);
    for (const chooser of [...removed.song.sections, ...removed.song.form, removed.practice.drill])
      expect('patternId' in chooser).toBe(false);
  });

  it('are renamed and swung, no further than from straight to dotted', () => {
    expect(after(renamePattern('p', 'Verse groove')).name).toBe('Verse groove');
    expect(after(setSwing('p', { level: 'sixteenth', ratio: 1.5 })).swing).toEqual({
      level: 'sixteenth',
      ratio: 1.5,
    });
    expect(after(setSwing('p', { level: 'eighth', ratio: 9 })).swing.ratio).toBe(3);
    expect(after(setSwing('p', { level: 'eighth', ratio: 0.1 })).swing.ratio).toBe(1);
  });
});

/** One beat of hits at these ticks, each a step long, in the given division, after another is chosen. */
function divided(ticks: readonly number[], from: Division, to: Division): Pattern {
  const left = ticks.map((at) => ({
    at,
    length: 480 / from,
    play: ['root'] as const,
    touch: 'plain' as const,
    held: true,
  }));
  const one = { ...GROOVE, divisions: [from, 2, 2, 2] as const, left, right: [] };
  return after(setDivision('p', 0, to), withPattern(one));
}

describe('another division of a beat', () => {
  it.each<[Division, Division, number[], string]>([
    [2, 4, [0, 240], '0+240 240+240'],
    [2, 3, [0, 240], '0+320 320+160'],
    [4, 3, [0, 120, 240, 360], '0+160 160+160 320+160'],
    [4, 2, [0, 120, 360], '0+240 240+240'],
    [4, 2, [360], '240+240'],
    [3, 2, [0, 160, 320], '0+240 240+240'],
    [3, 4, [0, 160, 320], '0+120 120+240 360+120'],
    [6, 4, [80, 400], '120+120 360+120'],
    [8, 4, [60, 180, 420], '120+120 240+120 360+120'],
    [4, 1, [120, 360], '0+480'],
  ])('from %d to %d steps moves %j to the nearest steps', (from, to, ticks, expected) => {
    const { left, divisions } = divided(ticks, from, to);
    expect(left.map(({ at, length }) => `${at}+${length}`).join(' ')).toBe(expected);
    expect(divisions).toEqual([to, 2, 2, 2]);
  });

  it('merges the tones of hits that meet on a step', () => {
    const one = pattern('4/4', { left: 'R5..3...........', right: 'C...............' });
    const { left } = after(setDivision('p', 0, 1), withPattern(one));
    expect(left.map(({ play }) => play)).toEqual([['root', 'fifth'], ['third']]);
  });

  it('moves the end of a hit that reaches in from the beat before', () => {
    const one = pattern('4/4', { left: '..R---..........', right: '................' });
    const { left } = after(setDivision('p', 1, 3), withPattern(one));
    expect(left).toMatchObject([{ at: 240, length: 240 + 320 }]);
  });

  it('leaves hits of other beats and the strokes of the band alone', () => {
    const grid = { meter: meter('4/4'), bars: 1, divisions: [4, 4, 4, 4] as const };
    const one = {
      ...pattern('4/4', { left: 'RRRRRRRRRRRRRRRR' }),
      sources: [source(grid, 'kick', 'x..xx..xx..xx..x')],
    };
    const changed = after(setDivision('p', 3, 3), withPattern(one));
    expect(changed.left.slice(0, 12)).toEqual(one.left.slice(0, 12));
    expect(changed.sources).toEqual(one.sources);
  });

  it('of the ending is its own: the last bar stays, and no longer takes the ending along', () => {
    const one = pattern('4/4', { left: 'R.5.R.5.', ending: { left: 'R.5.R.5.' } });
    const apart = after(setDivision('p', 3, 3, 'ending'), withPattern(one));
    expect(apart.divisions).toEqual(one.divisions);
    expect(apart.left).toEqual(one.left);
    expect(apart.ending?.divisions).toEqual([2, 2, 2, 3]);
    expect(after(setDivision('p', 3, 4), withPattern(apart)).ending).toEqual(apart.ending);
    const waltz = after(setPatternMeter('p', meter('3/4')), withPattern(apart));
    expect(waltz.ending?.divisions).toEqual([2, 2, 2]);
  });

  it('stays as it was in the ending when the last bar becomes another', () => {
    const one = pattern('2/4', { left: 'R.5.R..5..' }, { bars: 2, divisions: [2, 2, 3, 3] });
    const two = withPattern({ ...one, ending: { left: [], right: [] } });
    expect(after(setPatternBars('p', 1), two).ending?.divisions).toEqual([3, 3]);
    const copied = reworkPattern('p', (p) => copyBar(p, 'both', 0, 1));
    expect(after(copied, two).ending?.divisions).toEqual([3, 3]);
    expect(after(setPatternBars('p', 4), two).ending?.divisions).toBeUndefined();
  });

  it('takes the ending along in the last bar', () => {
    const one = pattern('4/4', { left: 'R...R...', ending: { left: 'R..5R...' } }, { bars: 1 });
    const { ending } = after(setDivision('p', 1, 3), withPattern(one));
    expect(ending?.left.map(({ at }) => at)).toEqual([0, 800, 960]);
    const two = after(setPatternBars('p', 2), withPattern(one));
    expect(after(setDivision('p', 1, 3), withPattern(two)).ending).toEqual(one.ending);
    expect(after(setDivision('p', 5, 3), withPattern(two)).ending).toEqual(ending);
  });
});

describe('another number of bars', () => {
  it('repeats the bars there are, with their divisions and the strokes of the band', () => {
    const grid = { meter: meter('4/4'), bars: 1, divisions: [2, 2, 2, 2] as const };
    const one = { ...GROOVE, sources: [source(grid, 'kick', 'x---x---')] };
    const two = after(setPatternBars('p', 2), withPattern(one));
    const twice = { ...grid, bars: 2, divisions: [2, 2, 2, 2, 2, 2, 2, 2] as const };
    expect(two).toEqual({
      ...one,
      ...twice,
      ...hands(twice, { left: 'R---5---R---5---', right: '..C-..C...C-..C.' }),
      sources: [source(twice, 'kick', 'x---x---x---x---')],
    });
  });

  it('cuts off the last bars, and a hit that would last into them', () => {
    const two = pattern('4/4', { left: 'R-----R-------5-' }, { bars: 2 });
    const cut = after(setPatternBars('p', 1), withPattern(two));
    expect(cut).toEqual(pattern('4/4', { left: 'R-----R-' }));
  });

  it.each(PATTERN_BARS)('grows to %d bars and comes back to what it was', (bars) => {
    const longer = setPatternBars('p', bars)(BEFORE);
    expect(setPatternBars('p', 1)(longer)).toEqual(BEFORE);
  });
});

describe('another meter of a pattern', () => {
  it.each([
    ['4/4', '3/4', 'R---5---', 'R---5-'],
    ['4/4', '3/4', 'R---..5-', 'R---..'],
    ['3/4', '4/4', 'R---5.', 'R---5...'],
    ['3/4', '4/4', 'R---5-', 'R---5---'],
    ['6/8', '4/4', 'R-.5-.', 'R-.5-.......'],
    ['12/8', '6/8', 'R-.5-.R-.5-.', 'R-.5-.'],
  ])('from %s to %s keeps what is played in each beat: %s', (from, to, left, expected) => {
    const one = pattern(from, { left });
    const changed = after(setPatternMeter('p', meter(to)), withPattern(one));
    expect(changed).toEqual(pattern(to, { left: expected }));
  });

  it('keeps the division of each beat, scales its inside, and divides new beats as the last', () => {
    const one = pattern('6/8', { left: 'R55R5.', ending: { left: 'R--5--' } });
    const changed = after(setPatternMeter('p', meter('3/4')), withPattern(one));
    expect(changed.divisions).toEqual([3, 3, 3]);
    expect(changed.left.map(({ at }) => at)).toEqual([0, 160, 320, 480, 640]);
    expect(changed.ending?.left.map(({ at, length }) => [at, length])).toEqual([
      [0, 480],
      [480, 960],
    ]);
  });
});

describe('hands and sources', () => {
  const grid = { meter: GROOVE.meter, bars: 1, divisions: GROOVE.divisions };

  it('are replaced, cut to the length of the pattern', () => {
    const twoBars = { ...grid, bars: 2, divisions: [...grid.divisions, ...grid.divisions] };
    const longer = hands(twoBars, { left: 'R.......R.......', right: '......C-........' });
    const replaced = after(replaceHands('p', longer));
    expect(replaced).toEqual(pattern('4/4', { left: 'R.......', right: '......C-' }));
    const kick = source(twoBars, 'kick', 'x---x---x---x---');
    expect(after(replaceSources('p', [kick])).sources).toEqual([source(grid, 'kick', 'x---x---')]);
  });

  it('keep a last hit that is tied over the end, as far as the first one of the next time round', () => {
    const [first, last] = hands(grid, { left: '..R...5-' }).left;
    const tied = (length: number) => ({ left: [first!, { ...last!, length }], right: [] });
    expect(after(replaceHands('p', tied(720))).left[1]?.length).toBe(720);
    expect(after(replaceHands('p', tied(1920))).left[1]?.length).toBe(960);
  });

  it('come with a pattern in order and on whole ticks, however they stood', () => {
    const [first, last] = hands(grid, { left: 'R---5---' }).left;
    const loose = {
      ...GROOVE,
      id: 'q',
      divisions: [2] as const,
      left: [last!, { ...first!, at: 0.4, length: 2000 }],
    };
    const { patterns } = addPattern(loose)(BEFORE);
    expect(patterns[1]).toEqual({ ...GROOVE, id: 'q', divisions: [2, 1, 1, 1] });
  });

  it('get an ending that begins as the last bar, which is edited and removed by itself', () => {
    const two = pattern(
      '4/4',
      { left: 'R-------5---8---', right: '................' },
      { bars: 2 },
    );
    const ended = addEnding('p')(withPattern(two));
    expect(ended.patterns[0]?.ending).toEqual(hands(grid, { left: '5---8---', right: '........' }));
    const other = hands(grid, { left: 'R-------', right: 'C-------' });
    expect(after(setEnding('p', other), ended)).toEqual({ ...two, ending: other });
    expect(removeEnding('p')(ended)).toEqual(withPattern(two));
    expect(addEnding('p')(ended)).toBe(ended);
  });
});

describe('a fill that is taken as the ending', () => {
  it.each(shelf().map((entry) => entry.pattern))('stays as it was made: $name', (given) => {
    const before = withPattern(given);
    for (const { ending } of endingFills(given, 90))
      expect(after(setEnding(given.id, ending), before).ending).toEqual(ending);
  });
});

describe('an edit of a pattern that does not apply', () => {
  it.each<[string, Edit]>([
    ['adds one under a taken id', addPattern(GROOVE)],
    ['copies one that is not there', duplicatePattern('nowhere', 'q')],
    ['copies one to a taken id', duplicatePattern('p', 'p')],
    ['removes one that is not there', removePattern('nowhere')],
    ['removes the only one', removePattern('p')],
    ['gives the name it has', renamePattern('p', 'Pattern')],
    ['gives the swing it has', setSwing('p', { ...GROOVE.swing })],
    ['gives the division it has', setDivision('p', 1, 2)],
    ['divides a beat that is not there', setDivision('p', 4, 3)],
    ['gives the bars it has', setPatternBars('p', 1)],
    ['gives the meter it has', setPatternMeter('p', meter('4/4'))],
    [
      'replaces the hands by the same',
      replaceHands('p', { left: GROOVE.left, right: GROOVE.right }),
    ],
    ['divides a beat of an ending that is not there', setDivision('p', 1, 3, 'ending')],
    ['replaces the sources by the same', replaceSources('p', [])],
    ['removes an ending that is not there', removeEnding('p')],
  ])('%s and leaves the very same project', (_, edit) => expect(edit(BEFORE)).toBe(BEFORE));
});
