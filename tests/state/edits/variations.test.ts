import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Hit, Pattern } from '../../../src/core/rhythm/pattern.ts';
import { patternTicks } from '../../../src/core/rhythm/pattern.ts';
import { clearHits, mirrorHands, shiftHits } from '../../../src/core/rhythm/patternMoves.ts';
import { decodeProject, encodeProject } from '../../../src/formats/projectFile.ts';
import type { Edit } from '../../../src/state/edits/edit.ts';
import { setHitTouch } from '../../../src/state/edits/hits.ts';
import {
  addPattern,
  duplicatePattern,
  removePattern,
  renamePattern,
  setPatternBars,
} from '../../../src/state/edits/pattern.ts';
import {
  addFamily,
  addVariation,
  familyName,
  familyOf,
  reworkPattern,
} from '../../../src/state/edits/variations.ts';
import { valueOf } from '../../support/music.ts';
import { pattern, ticksOf } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';
import { shelf } from '../../support/shelf.ts';

const GROOVE = pattern('4/4', {
  left: 'R---5---',
  right: '..C-..C.',
  ending: { left: 'R-------' },
});
const BEFORE = project({ patterns: [GROOVE, { ...GROOVE, id: 'q', name: 'Other' }] });

function first(edit: Edit): Pattern {
  return edit(BEFORE).patterns[0]!;
}

describe('reworking a pattern', () => {
  it('changes its hits and keeps its identity, its name and its ending', () => {
    const later = first(reworkPattern('p', (p) => shiftHits(p, 'left', 240)));
    expect(ticksOf(later.left)).toEqual([240, 1200]);
    expect(later).toMatchObject({ id: 'p', name: 'Pattern', ending: GROOVE.ending });
  });

  it('of its ending changes the ending alone', () => {
    const changed = first(reworkPattern('p', mirrorHands, 'ending'));
    expect(changed.ending?.right).toHaveLength(1);
    expect(changed.left).toBe(BEFORE.patterns[0]?.left);
  });

  it('is no change where the rule changes nothing', () => {
    expect(reworkPattern('p', (p) => clearHits(p, 'left', 480, 960))(BEFORE)).toBe(BEFORE);
    expect(reworkPattern('q', mirrorHands, 'ending')(project())).toEqual(project());
    expect(reworkPattern('gone', mirrorHands)(BEFORE)).toBe(BEFORE);
  });
});

describe('variations of a pattern', () => {
  it('stand behind their original, in the order they were made, and are called after it', () => {
    const one = addVariation('p', 'v1', 'level 2', GROOVE)(BEFORE);
    const two = addVariation('v1', 'v2', 'in 3/4', GROOVE)(one);
    const three = addVariation('p', 'v3', 'level 2', GROOVE)(two);
    expect(three.patterns.map(({ id, name }) => [id, name])).toEqual([
      ['p', 'Pattern'],
      ['v1', 'Pattern (level 2)'],
      ['v2', 'Pattern (in 3/4)'],
      ['v3', 'Pattern (level 2) 2'],
      ['q', 'Other'],
    ]);
  });

  const withTwo = [
    addVariation('p', 'v1', 'level 2', GROOVE),
    addVariation('v1', 'v2', 'level 1', GROOVE),
  ].reduce((before, edit) => edit(before), BEFORE);
  const named = (edit: Edit, before = withTwo) =>
    edit(before).patterns.map(({ id, name, variationOf }) => [id, name, variationOf]);

  it('are variations of the original, whichever of them they were made of', () =>
    expect(withTwo.patterns.map(({ variationOf }) => variationOf)).toEqual([
      undefined,
      'p',
      'p',
      undefined,
    ]));

  it('take a new name with it, letter by letter, and leave other patterns their names', () => {
    const typed = ['Patter', 'Other', 'Other waltz'].map((name) => renamePattern('p', name));
    const last = typed.reduce((before, edit) => edit(before), withTwo);
    expect(named((p) => p, last)).toEqual([
      ['p', 'Other waltz', undefined],
      ['v1', 'Other waltz (level 2)', 'p'],
      ['v2', 'Other waltz (level 1)', 'p'],
      ['q', 'Other', undefined],
    ]);
  });

  it('with a name of their own keep it', () => {
    const own = renamePattern('v1', 'Sunday')(withTwo);
    expect(named(renamePattern('p', 'Monday'), own)[1]).toEqual(['v1', 'Sunday', 'p']);
    const third = addVariation('v1', 'v3', 'level 3', GROOVE)(own);
    expect(third.patterns.map(({ id }) => id)).toEqual(['p', 'v1', 'v2', 'v3', 'q']);
  });

  it('stay when the original goes, together under the first of them', () =>
    expect(named(removePattern('p'))).toEqual([
      ['v1', 'Pattern (level 2)', undefined],
      ['v2', 'Pattern (level 1)', 'v1'],
      ['q', 'Other', undefined],
    ]));

  it('are copied as what they are', () =>
    expect(named(duplicatePattern('v1', 'w'))[2]).toEqual(['w', 'Pattern (level 2) 2', 'p']));

  it('are a family with the original first, whichever is asked for', () => {
    const ids = (id: string) => familyOf(withTwo.patterns, id).map((each) => each.id);
    expect(ids('v2')).toEqual(['p', 'v1', 'v2']);
    expect(ids('p')).toEqual(['p', 'v1', 'v2']);
    expect(ids('q')).toEqual(['q']);
    expect(ids('gone')).toEqual([]);
  });

  it('come from elsewhere with their original, called after the name that it gets', () => {
    const added = addFamily(familyOf(withTwo.patterns, 'p'))(BEFORE);
    expect(
      added.patterns.slice(2).map(({ id, name, variationOf }) => [id, name, variationOf]),
    ).toEqual([
      ['pattern-1', 'Pattern 2', undefined],
      ['pattern-2', 'Pattern 2 (level 2)', 'pattern-1'],
      ['pattern-3', 'Pattern 2 (level 1)', 'pattern-1'],
    ]);
    expect(addFamily([])(BEFORE)).toBe(BEFORE);
  });

  it('keep the ending, and are saved and read back with it', () => {
    const read = valueOf(decodeProject(encodeProject(withTwo)));
    expect(read.patterns).toEqual(withTwo.patterns);
    expect(read.patterns[1]?.ending).toEqual(GROOVE.ending);
  });

  it('are not made of a pattern that is not there, or under an identity that is taken', () => {
    expect(addVariation('gone', 'v', 'level 1', GROOVE)(BEFORE)).toBe(BEFORE);
    expect(addVariation('p', 'q', 'level 1', GROOVE)(BEFORE)).toBe(BEFORE);
  });

  it.each([
    ['Pattern (level 2)', 'Pattern'],
    ['Pattern (in 2+2+3/8) 3', 'Pattern'],
    ['Pattern (in 4/4(4))', 'Pattern'],
    ['Pattern (for the choir)', 'Pattern (for the choir)'],
    ['Pattern 2', 'Pattern 2'],
  ])('%s belongs to the family %s', (name, family) => expect(familyName(name)).toBe(family));
});

/** Patterns of the shelf in which a hand's last hit is tied over the end. */
const TIED = shelf()
  .map((entry) => entry.pattern)
  .filter((p) => [...p.left, ...p.right].some((hit) => hit.at + hit.length > patternTicks(p)));

function tiedOver(p: Pattern): readonly Hit[] {
  return [...p.left, ...p.right].filter((hit) => hit.at + hit.length > patternTicks(p));
}

describe('what is tied over the end of a pattern', () => {
  it('is there in the pushed pop and in the tumbao', () =>
    expect(TIED.map(({ id }) => id)).toEqual(expect.arrayContaining(['pushed-pop', 'tumbao'])));

  it.each(TIED)('stays tied when $name is taken from the shelf and changed elsewhere', (tied) => {
    const taken = addPattern(tied)(project());
    const now = (edit: Edit) => tiedOver(edit(taken).patterns.at(-1)!);
    const ties = tiedOver(tied);
    expect(now((p) => p)).toEqual(ties);
    const hand = ties.some((hit) => tied.left.some((left) => left === hit)) ? 'left' : 'right';
    expect(now(setHitTouch(tied.id, hand, tied[hand][0]!.at, 'ghost'))).toEqual(ties);
    expect(now(reworkPattern(tied.id, (p) => clearHits(p, 'both', 480, 960)))).toEqual(ties);
  });

  it.each(TIED)('reaches into the bars that $name is repeated in', (tied) => {
    const taken = setPatternBars(tied.id, 4)(addPattern(tied)(project()));
    const long = taken.patterns.at(-1)!;
    const lengths = (p: Pattern) =>
      [...p.left, ...p.right].map((hit) => hit.length).toSorted((a, b) => a - b);
    const four = Array.from({ length: 4 / tied.bars }, () => lengths(tied)).flat();
    expect(lengths(long)).toEqual(four.toSorted((a, b) => a - b));
  });

  it('is never cut by shifting there and back', () =>
    fc.assert(
      fc.property(fc.constantFrom(...TIED), fc.integer({ min: 0, max: 8 }), (tied, eighths) => {
        const there = reworkPattern(tied.id, (p) => shiftHits(p, 'both', eighths * 240));
        const back = reworkPattern(tied.id, (p) => shiftHits(p, 'both', -eighths * 240));
        const after = back(there(addPattern(tied)(project()))).patterns.at(-1)!;
        expect({ left: after.left, right: after.right }).toEqual({
          left: tied.left,
          right: tied.right,
        });
      }),
    ));
});
