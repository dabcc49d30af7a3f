import { describe, expect, it } from 'vitest';
import { type Pattern, patternSteps } from '../../../../src/core/rhythm/pattern.ts';
import type { WhichHands } from '../../../../src/core/rhythm/patternMoves.ts';
import { changesAt } from '../../../../src/ui/rhythm/desk/changes.ts';
import { pattern, ticksOf } from '../../../support/patterns.ts';

const TWO_BARS = pattern('2/4', { left: 'R..5....', right: '........' }, { bars: 2 });

function groups(p: Pattern, column: number, which: WhichHands = 'both', isEnding = false) {
  const { places, playing } = changesAt(p, { step: patternSteps(p)[column]!, which }, isEnding);
  return [...places, ...playing];
}

/** Everything that is offered in a pattern, by name. */
function names(p: Pattern, isEnding: boolean): string[] {
  return groups(p, 0, 'both', isEnding).flatMap(({ changes }) => changes.map(({ name }) => name));
}

/** The pattern after a change, by its group and its name, at a step. */
function changed(p: Pattern, [title, name]: readonly [string, string], column = 0): Pattern {
  const found = groups(p, column)
    .find((group) => group.title === title)
    ?.changes.find((change) => change.name === name);
  if (!found) throw new Error(`no change is called ${title}: ${name}`);
  return found.rule(p);
}

describe('changes at a place', () => {
  it.each([
    ['Copy', 'beat to the next', 0, [0, 480]],
    ['Copy', 'beat to all', 0, [0, 480, 960, 1440]],
    ['Copy', 'bar to the next', 0, [0, 720, 960, 1680]],
    ['Copy', 'bar to all', 4, []],
    ['Shift', 'step later', 0, [240, 960]],
    ['Shift', 'beat earlier', 0, [240, 1440]],
    ['Fill', 'this beat', 0, [0, 240, 720]],
    ['Clear', 'beat', 2, [0]],
    ['Clear', 'bar', 0, []],
    ['Time', 'double time', 0, [0, 360]],
  ] as const)('%s: %s, at step %i, leaves hits at %j', (title, name, column, ticks) =>
    expect(ticksOf(changed(TWO_BARS, [title, name], column).left)).toEqual(ticks),
  );

  it('pushes the beat of the cursor by the step before it, round the pattern', () => {
    const push = (column: number) =>
      changed(TWO_BARS, ['Push', 'beat early, tied over'], column).left.map(
        ({ at, length, anticipates }) => [at, length, anticipates],
      );
    expect(push(0)).toEqual([
      [720, 240, undefined],
      [1680, 480, true],
    ]);
    const on2 = pattern('2/4', { left: 'R.5.' });
    expect(changed(on2, ['Push', 'beat early, tied over'], 2).left).toMatchObject([
      { at: 0 },
      { at: 240, length: 480, play: ['fifth'], anticipates: true },
    ]);
  });

  it('offers no push where the beat before is not divided', () => {
    const crotchets = pattern('4/4', { left: 'R.5.' });
    expect(names(crotchets, false)).not.toContain('beat early, tied over');
  });

  it('gives the other hand the rhythm of one', () => {
    const { right } = changed(TWO_BARS, ['Hands', 'right as left']);
    expect(ticksOf(right)).toEqual([0, 720]);
  });

  it('accents the backbeats', () => {
    const beats = pattern('4/4', { right: 'C.C.C.C.' });
    const touches = changed(beats, ['Accent', 'backbeats']).right.map(({ touch }) => touch);
    expect(touches).toEqual(['plain', 'accent', 'plain', 'accent']);
  });

  it('leaves the hand alone that is not meant', () => {
    const both = pattern('2/4', { left: 'R.5.', right: 'C.C.' });
    const clear = groups(both, 0, 'right').find(({ title }) => title === 'Clear')!.changes[1]!;
    expect(clear.rule(both)).toMatchObject({ left: both.left, right: [] });
  });

  it('are named once in their group', () => {
    for (const { changes } of groups(TWO_BARS, 0))
      expect(new Set(changes.map(({ name }) => name)).size).toBe(changes.length);
  });

  it('copy no bar where there is only one', () => {
    const one = pattern('2/4', { left: 'R...' });
    expect(names(one, false)).not.toContain('bar to the next');
  });

  it('do not make a pattern longer than it can be, nor change the length of an ending', () => {
    const four = pattern('2/4', { left: 'R...............' }, { bars: 4 });
    expect(names(four, false)).not.toContain('half time');
    expect(names(TWO_BARS, true)).not.toContain('double time');
  });
});
