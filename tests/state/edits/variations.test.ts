import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Hit, Pattern } from '../../../src/core/rhythm/pattern.ts';
import { patternTicks } from '../../../src/core/rhythm/pattern.ts';
import { clearHits, mirrorHands, shiftHits } from '../../../src/core/rhythm/patternMoves.ts';
import type { Edit } from '../../../src/state/edits/edit.ts';
import { setHitTouch } from '../../../src/state/edits/hits.ts';
import { addPattern, setPatternBars } from '../../../src/state/edits/pattern.ts';
import { addVariation, familyName, reworkPattern } from '../../../src/state/edits/variations.ts';
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
