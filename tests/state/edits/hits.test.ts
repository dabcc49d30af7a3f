import { describe, expect, it } from 'vitest';
import type { Hands, Hit, Pattern } from '../../../src/core/rhythm/pattern.ts';
import type { Edit } from '../../../src/state/edits/edit.ts';
import {
  addHit,
  lengthenHit,
  moveHit,
  removeHit,
  setHitAnticipates,
  setHitHeld,
  setHitLength,
  setHitPlay,
  setHitTouch,
} from '../../../src/state/edits/hits.ts';
import { pattern } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

/** Steps of an eighth, as in the grids below. */
const STEP = 240;

const BEFORE = of({ left: 'R---5---', right: '..C-..C.' }, { left: 'R-------', right: 'C...C...' });

function of(text: { left: string; right: string }, ending?: { left: string; right: string }) {
  return project({ patterns: [pattern('4/4', { ...text, ...(ending ? { ending } : {}) })] });
}

function after(edit: Edit, before = BEFORE): Pattern {
  const found = edit(before).patterns[0];
  if (!found) throw new Error('no pattern');
  return found;
}

/** A hand's hits as `place+length tones`, in steps. */
function written(hits: Hands['left' | 'right']): string {
  return hits
    .map(({ at, length, play }) => `${at / STEP}+${length / STEP} ${play.join('&')}`)
    .join(', ');
}

function leftHit(step: number, steps: number, parts: Partial<Hit<'root' | 'octave'>> = {}) {
  return {
    at: step * STEP,
    length: steps * STEP,
    play: ['root'] as const,
    touch: 'plain' as const,
    held: true,
    ...parts,
  };
}

describe('adding a hit', () => {
  it.each([
    [
      'in a gap it is as long as the next hit lets it',
      'R---5---',
      leftHit(2, 9),
      '0+2 root, 2+2 root, 4+4 fifth',
    ],
    ['in a long hit it cuts that short', 'R-------', leftHit(6, 1), '0+6 root, 6+1 root'],
    ['at the end it ends with the pattern', 'R-......', leftHit(7, 3), '0+2 root, 7+1 root'],
    [
      'on a hit both become one',
      'R-..5-..',
      leftHit(4, 3, { play: ['octave'] }),
      '0+2 root, 4+3 fifth&octave',
    ],
  ])('%s', (_, left, hit, expected) =>
    expect(written(after(addHit('p', 'left', hit), of({ left, right: '........' })).left)).toBe(
      expected,
    ),
  );

  it('keeps the stronger touch, and held and anticipating where either is', () => {
    const first = leftHit(4, 1, { touch: 'accent', held: false, anticipates: true });
    const second = leftHit(4, 1, { touch: 'ghost', held: true });
    const both = addHit('p', 'left', second);
    expect(
      after(both, addHit('p', 'left', first)(of({ left: '........', right: '........' }))).left,
    ).toEqual([{ ...first, held: true }]);
  });
});

describe('a hit that stands there', () => {
  it('is removed', () => {
    expect(written(after(removeHit('p', 'left', 4 * STEP)).left)).toBe('0+4 root');
    expect(written(after(removeHit('p', 'right', 2 * STEP)).right)).toBe('6+1 all');
  });

  it.each([
    [4, 6, '0+4 root, 6+2 fifth'],
    [4, 2, '0+2 root, 2+4 fifth'],
    [0, 5, '4+1 fifth, 5+3 root'],
    [4, 0, '0+4 root&fifth'],
  ])('is moved from step %d to step %d', (from, to, expected) =>
    expect(written(after(moveHit('p', 'left', from * STEP, to * STEP)).left)).toBe(expected),
  );

  it.each([
    [1, '0+1 root, 4+4 fifth'],
    [9, '0+4 root, 4+4 fifth'],
  ])('is made %d steps long, as far as there is room', (steps, expected) =>
    expect(written(after(setHitLength('p', 'left', 0, steps * STEP)).left)).toBe(expected),
  );

  it('is at least a tick long', () =>
    expect(after(setHitLength('p', 'left', 0, -5)).left[0]?.length).toBe(1));

  it.each([
    ['a step longer', 2, 1, '2+3 all, 6+1 all'],
    ['a step shorter', 2, -1, '2+1 all, 6+1 all'],
  ] as const)('is made %s along the grid', (_, at, by, expected) =>
    expect(written(after(lengthenHit('p', 'right', at * STEP, by)).right)).toBe(expected),
  );

  it('ends on the grid when it is lengthened, wherever it ended before', () => {
    const odd = setHitLength('p', 'right', 2 * STEP, 1.5 * STEP)(BEFORE);
    expect(written(after(lengthenHit('p', 'right', 2 * STEP, 1), odd).right)).toBe(
      '2+2 all, 6+1 all',
    );
    expect(written(after(lengthenHit('p', 'right', 2 * STEP, -1), odd).right)).toBe(
      '2+1 all, 6+1 all',
    );
  });

  it('is tied over the end step by step, to the hand’s first hit of the next time round', () => {
    const last = lengthenHit('p', 'right', 6 * STEP, 1);
    const tied = [1, 2, 3, 4].reduce((before) => last(before), BEFORE);
    expect(written(tied.patterns[0]?.right ?? [])).toBe('2+2 all, 6+4 all');
    const shorter = lengthenHit('p', 'right', 6 * STEP, -1);
    expect(written(after(shorter, tied).right)).toBe('2+2 all, 6+3 all');
  });

  it('plays other tones, in order and each once', () =>
    expect(after(setHitPlay('p', 'left', 0, ['octave', 'root', 'octave'])).left[0]?.play).toEqual([
      'root',
      'octave',
    ]));

  it('takes another touch, becomes short, and anticipates or not', () => {
    expect(after(setHitTouch('p', 'left', 0, 'ghost')).left[0]?.touch).toBe('ghost');
    expect(after(setHitHeld('p', 'left', 0, false)).left[0]?.held).toBe(false);
    const anticipating = setHitAnticipates('p', 'right', 6 * STEP, true)(BEFORE);
    expect(anticipating.patterns[0]?.right[1]?.anticipates).toBe(true);
    expect(setHitAnticipates('p', 'right', 6 * STEP, false)(anticipating)).toEqual(BEFORE);
  });
});

describe('the ending', () => {
  it('is edited apart from the bars', () => {
    const edited = after(moveHit('p', 'right', 4 * STEP, 6 * STEP, 'ending'));
    expect(written(edited.ending?.right ?? [])).toBe('0+1 all, 6+1 all');
    expect(edited.right).toEqual(BEFORE.patterns[0]?.right);
  });

  it('has room for one bar', () => {
    const twoBars = project({
      patterns: [
        pattern('4/4', { left: 'R-------R-------', ending: { left: 'R-------' } }, { bars: 2 }),
      ],
    });
    expect(
      written(after(addHit('p', 'left', leftHit(7, 4), 'ending'), twoBars).ending?.left ?? []),
    ).toBe('0+7 root, 7+1 root');
    expect(addHit('p', 'left', leftHit(8, 1), 'ending')(twoBars)).toBe(twoBars);
  });

  it('is tied over the bar line into the section that follows, for a bar at the most', () => {
    const longer = lengthenHit('p', 'left', 0, 1, 'ending');
    const ended = of(
      { left: 'R-------', right: '........' },
      { left: 'R-------', right: '........' },
    );
    expect(written(after(longer, ended).ending?.left ?? [])).toBe('0+9 root');
    const longest = after(setHitLength('p', 'left', 0, 99 * STEP, 'ending'), ended);
    expect(written(longest.ending?.left ?? [])).toBe('0+16 root');
  });
});

describe('an edit of a hit that does not apply', () => {
  const withoutEnding = of({ left: 'R---5---', right: '..C-..C.' });

  it.each<[string, Edit]>([
    ['adds to a pattern that is not there', addHit('nowhere', 'left', leftHit(1, 1))],
    ['adds before the beginning', addHit('p', 'left', leftHit(-1, 1))],
    ['adds after the end', addHit('p', 'left', leftHit(8, 1))],
    ['adds what is no tick long', addHit('p', 'left', leftHit(1, 0))],
    ['adds what plays nothing', addHit('p', 'left', leftHit(1, 1, { play: [] }))],
    ['adds what is there', addHit('p', 'left', leftHit(0, 2))],
    ['adds to an ending that is not there', addHit('p', 'left', leftHit(1, 1), 'ending')],
    ['removes what is not there', removeHit('p', 'left', STEP)],
    ['removes from the other hand', removeHit('p', 'right', 0)],
    ['moves what is not there', moveHit('p', 'left', STEP, 0)],
    ['moves a hit out of the pattern', moveHit('p', 'left', 0, 8 * STEP)],
    ['moves a hit to where it is', moveHit('p', 'left', 0, 0)],
    ['lengthens a hit into the next one', lengthenHit('p', 'left', 0, 1)],
    ['lengthens the last hit over the end', lengthenHit('p', 'left', 4 * STEP, 1)],
    ['shortens a hit of one step', lengthenHit('p', 'right', 6 * STEP, -1)],
    ['sets the length it has', setHitLength('p', 'left', 0, 4 * STEP)],
    ['lets a hit play nothing', setHitPlay('p', 'left', 0, [])],
    ['lets a hit play what it plays', setHitPlay('p', 'left', 0, ['root'])],
    ['sets the touch it has', setHitTouch('p', 'left', 0, 'plain')],
    ['holds a hit that is held', setHitHeld('p', 'left', 0, true)],
    ['takes no anticipation away', setHitAnticipates('p', 'left', 0, false)],
  ])('%s and leaves the very same project', (_, edit) =>
    expect(edit(withoutEnding)).toBe(withoutEnding),
  );
});
