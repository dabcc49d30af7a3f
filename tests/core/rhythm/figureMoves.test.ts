import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  approachAtEnd,
  BROKEN_WAYS,
  type BrokenWay,
  bassInOctaves,
  brokenChords,
  inManner,
  pushed,
  wholeChords,
} from '../../../src/core/rhythm/figureMoves.ts';
import { type Hit, patternSteps, patternTicks } from '../../../src/core/rhythm/pattern.ts';
import { pattern } from '../../support/patterns.ts';
import { shelf } from '../../support/shelf.ts';

const PATTERNS = shelf().map((entry) => entry.pattern);
const BAR = { from: 0, until: 1920 };

/** Hits as `step+steps tones`, steps being eighths. */
function written(hits: readonly Hit[]): string {
  return hits
    .map(({ at, length, play }) => `${at / 240}+${length / 240} ${play.join('&')}`)
    .join(', ');
}

describe('playing all hits in one manner', () => {
  it('changes the hands that are meant, and nothing but the manner', () => {
    const both = pattern('4/4', { left: 'R---5---', right: '..C-..C-' });
    const short = inManner(both, 'right', { held: false });
    expect(short.left).toEqual(both.left);
    expect(short.right).toEqual(both.right.map((hit) => ({ ...hit, held: false })));
    expect(inManner(short, 'both', { touch: 'ghost' }).left[0]?.touch).toBe('ghost');
  });
});

describe('a push', () => {
  const p = pattern('4/4', { left: 'R---5---', right: 'C-C-C-C-' });

  it('strikes early, sounds on to where it ended, and takes the chord it leads into', () => {
    const { right, left } = pushed(p, 'right', 960, 240);
    expect(written(right)).toBe('0+2 all, 2+2 all, 3+3 all, 6+2 all');
    expect(right[2]?.anticipates).toBe(true);
    expect(left).toEqual(p.left);
  });

  it('goes from the start to the end of the pattern, tied over it', () =>
    expect(written(pushed(p, 'left', 0, 240).left)).toBe('4+4 fifth, 7+5 root'));

  it('takes the place of a hit that is in its way', () =>
    expect(written(pushed(p, 'right', 960, 480).right)).toBe('0+2 all, 2+4 all, 6+2 all'));
});

describe('broken chords', () => {
  it('go up through the voices on the steps on which the chords sound', () => {
    const p = pattern('4/4', { right: 'C---..C-' });
    expect(written(brokenChords(p, 'up', BAR).right)).toBe(
      '0+1 voice-1, 1+1 voice-2, 2+1 voice-3, 3+1 voice-4, 6+1 voice-1, 7+1 voice-2',
    );
  });

  it('keep an accent on the step of the chord only, and other bars as they are', () => {
    const p = pattern('2/4', { right: 'C---C---' }, { bars: 2 });
    const accented = inManner(p, 'right', { touch: 'accent' });
    const { right } = brokenChords(accented, 'up and down', { from: 960, until: 1920 });
    expect(right[0]).toEqual(accented.right[0]);
    expect(right.slice(1).map(({ touch }) => touch)).toEqual(['accent', 'plain', 'plain', 'plain']);
  });

  it('of every pattern of the shelf sound where its right hand did, and stand on its steps', () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...PATTERNS),
        fc.constantFrom(...(Object.keys(BROKEN_WAYS) as BrokenWay[])),
        (p, way) => {
          const whole = { from: 0, until: patternTicks(p) };
          const { right } = brokenChords(p, way, whole);
          const steps = new Set(patternSteps(p).map(({ at }) => at));
          for (const [i, { at, length }] of right.entries()) {
            expect(steps.has(at)).toBe(true);
            expect(at + length).toBeLessThanOrEqual(right[i + 1]?.at ?? whole.until);
          }
          for (const { at } of p.right) expect(right.some((hit) => hit.at === at)).toBe(true);
        },
      ),
    ));

  it('become whole chords again', () => {
    const p = pattern('4/4', { right: '12341234' });
    expect(written(wholeChords(p, { from: 960, until: 1920 }).right)).toBe(
      '0+1 voice-1, 1+1 voice-2, 2+1 voice-3, 3+1 voice-4, 4+1 all, 5+1 all, 6+1 all, 7+1 all',
    );
  });
});

describe('the bass', () => {
  const p = pattern('4/4', { left: 'R-5-R-5-' });

  it('is doubled in octaves on its roots, and single again', () => {
    const doubled = bassInOctaves(p, BAR);
    expect(written(doubled.left)).toBe('0+2 root&octave, 2+2 fifth, 4+2 root&octave, 6+2 fifth');
    expect(bassInOctaves(doubled, BAR)).toEqual(p);
  });

  it('comes to the next root from below with its last hit', () =>
    expect(written(approachAtEnd(p, BAR).left)).toBe(
      '0+2 root, 2+2 fifth, 4+2 root, 6+2 approach',
    ));

  it('takes the last step for it where it strikes only once', () => {
    const whole = pattern('4/4', { left: 'R-------' });
    expect(written(approachAtEnd(whole, BAR).left)).toBe('0+7 root, 7+1 approach');
  });
});
