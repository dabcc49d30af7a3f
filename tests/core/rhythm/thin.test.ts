import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HAND_LIMITS, type HandLimits } from '../../../src/core/rhythm/handLimits.ts';
import { importanceOf } from '../../../src/core/rhythm/importance.ts';
import { keepsToLevel, LEVELS, type Level } from '../../../src/core/rhythm/levels.ts';
import type { Hands, Hit, Pattern } from '../../../src/core/rhythm/pattern.ts';
import { type ThinContext, thinHands } from '../../../src/core/rhythm/thin.ts';
import { meter } from '../../support/music.ts';
import { hands, pattern, source, ticksOf } from '../../support/patterns.ts';
import { shelf } from '../../support/shelf.ts';

const ALL_LEVELS: readonly Level[] = [1, 2, 3, 4, 5];
const SIXTEENTHS = pattern('4/4', { left: '................' });
const RUN = pattern('4/4', { left: 'RRRRRRRRRRRRRRRR', right: 'CCCCCCCCCCCCCCCC' });

function importance(kept: Hands, context: Pattern & ThinContext): number {
  return [...kept.left, ...kept.right].reduce((sum, hit) => sum + importanceOf(hit, context), 0);
}

/** Every choice of some of the hits. */
function choices<T>(hits: readonly T[]): T[][] {
  return hits.reduce<T[][]>((all, hit) => [...all, ...all.map((some) => [...some, hit])], [[]]);
}

/** The greatest importance of any choice of hits that keeps to a level, by trying all. */
function bestByTrying(
  from: Hands,
  level: Level,
  bpm: number,
  context: Pattern & ThinContext,
  limits: HandLimits = HAND_LIMITS,
): number {
  const rights = choices(from.right);
  return Math.max(
    ...choices(from.left).flatMap((left) =>
      rights
        .map((right) => ({ left, right }))
        .filter((kept) => keepsToLevel(kept, level, bpm, context, limits))
        .map((kept) => importance(kept, context)),
    ),
  );
}

/** Up to five of a hand's tones on sixteen steps. */
function anySigns(tones: readonly string[]): fc.Arbitrary<string> {
  return fc
    .uniqueArray(fc.nat(15), { maxLength: 5 })
    .chain((steps) =>
      fc
        .array(fc.constantFrom(...tones), { minLength: steps.length, maxLength: steps.length })
        .map((played) =>
          Array.from({ length: 16 }, (_, i) => played[steps.indexOf(i)] ?? '.').join(''),
        ),
    );
}

function anyHands(): fc.Arbitrary<Hands> {
  const touched = fc.infiniteStream(
    fc.constantFrom('ghost' as const, 'plain' as const, 'accent' as const),
  );
  return fc
    .tuple(anySigns(['R', '5', 'X', 'v', 'a']), anySigns(['C', 'T', '5', '1']), touched)
    .map(([left, right, touches]) => {
      const both = hands(SIXTEENTHS, { left, right });
      const touch = <H extends Hit>(hits: readonly H[]): H[] =>
        hits.map((hit) => ({ ...hit, touch: touches.next().value }));
      return { left: touch(both.left), right: touch(both.right) };
    });
}

describe('thinning', () => {
  it('keeps beats in a first lesson and everything playable at the top', () => {
    expect(ticksOf(thinHands(RUN, 1, 90, RUN).left)).toEqual([0, 480, 960, 1440]);
    expect(ticksOf(thinHands(RUN, 2, 90, RUN).right)).toEqual([0, 480, 960, 1440]);
    expect(thinHands(RUN, 5, 90, RUN)).toEqual({ left: RUN.left, right: RUN.right });
  });

  it('keeps less the faster the tempo', () => {
    const counts = [60, 90, 120, 150, 180].map((bpm) => thinHands(RUN, 3, bpm, RUN).left.length);
    expect(counts).toEqual(counts.toSorted((a, b) => b - a));
    expect(counts[0]).toBeGreaterThan(counts.at(-1)!);
  });

  it('keeps of two equal places the earlier, unless something speaks for the later', () => {
    const close = hands(SIXTEENTHS, { left: '.....5.5........' });
    const kept = (context: ThinContext, both = close) =>
      ticksOf(thinHands(both, 3, 140, context).left);
    expect(kept(SIXTEENTHS)).toEqual([600]);
    expect(
      kept({ ...SIXTEENTHS, sources: [source(SIXTEENTHS, 'kick', '.......x........')] }),
    ).toEqual([840]);
    expect(kept({ ...SIXTEENTHS, changes: [840] })).toEqual([840]);
    const later = (change: Partial<Pattern['left'][number]>): Hands => ({
      ...close,
      left: close.left.map((hit, i) => (i === 1 ? { ...hit, ...change } : hit)),
    });
    expect(kept(SIXTEENTHS, later({ touch: 'accent' }))).toEqual([840]);
    expect(kept(SIXTEENTHS, later({ anticipates: true }))).toEqual([840]);
    const roots = later({ play: ['root'] }).left;
    expect(importanceOf(roots[1]!, SIXTEENTHS)).toBeGreaterThan(
      importanceOf(roots[0]!, SIXTEENTHS),
    );
  });

  it('keeps the beats of 6/8 rather than more of its weaker eighths', () => {
    const p = pattern('6/8', { left: 'RRRRRR' });
    expect(ticksOf(thinHands(p, 2, 60, p).left)).toEqual([0, 720]);
  });

  it('counts the tempo in the meter’s beat and the gaps as they are swung', () => {
    const p = pattern('6/8', { left: 'RRRRRR' });
    expect(ticksOf(thinHands(p, 2, 56, p).left)).toEqual([0, 240, 480, 720, 960, 1200]);
    const eighths = pattern('4/4', { left: 'RRRRRRRR' });
    const swung: Pattern = { ...eighths, swing: { level: 'eighth', ratio: 2 } };
    expect(thinHands(eighths, 3, 110, eighths).left).toHaveLength(8);
    expect(ticksOf(thinHands(swung, 3, 110, swung).left)).toEqual([0, 480, 960, 1440]);
  });

  it('gives nothing for nothing', () =>
    expect(thinHands({ left: [], right: [] }, 3, 120, SIXTEENTHS)).toEqual({
      left: [],
      right: [],
    }));
});

/**
 * What is kept without the single hit of a hand (in one bar) that would else have none; the law of the
 * level holds for one of these.
 */
function withoutAnswers({ left, right }: Hands): Hands[] {
  const ways = <H>(hits: readonly H[]) => (hits.length === 1 ? [hits, []] : [hits]);
  return ways(left).flatMap((l) => ways(right).map((r) => ({ left: l, right: r })));
}

describe('laws of thinning', () => {
  const bpms = fc.constantFrom(56, 92, 120, 176);

  it('never adds or changes a hit, and every level has all hits of the level below', () =>
    fc.assert(
      fc.property(anyHands(), bpms, (both, bpm) => {
        const levels = ALL_LEVELS.map((level) => thinHands(both, level, bpm, SIXTEENTHS));
        for (const [i, kept] of levels.entries()) {
          const above = levels[i + 1] ?? both;
          expect(kept.left.every((hit) => above.left.includes(hit))).toBe(true);
          expect(kept.right.every((hit) => above.right.includes(hit))).toBe(true);
        }
      }),
      { numRuns: 40 },
    ));

  it('keeps to the level, but for the answer of a hand that would have nothing', () =>
    fc.assert(
      fc.property(anyHands(), bpms, fc.constantFrom(...ALL_LEVELS), (both, bpm, level) => {
        const kept = thinHands(both, level, bpm, SIXTEENTHS);
        const keeps = (some: Hands) => keepsToLevel(some, level, bpm, SIXTEENTHS);
        expect(withoutAnswers(kept).some(keeps)).toBe(true);
      }),
      { numRuns: 60 },
    ));

  it('is as important as the best of all choices', () =>
    fc.assert(
      fc.property(anyHands(), bpms, fc.constantFrom(...ALL_LEVELS), (both, bpm, level) => {
        const from = level === 5 ? both : thinHands(both, (level + 1) as Level, bpm, SIXTEENTHS);
        const kept = thinHands(both, level, bpm, SIXTEENTHS);
        expect(withoutAnswers(kept).map((some) => importance(some, SIXTEENTHS))).toContain(
          bestByTrying(from, level, bpm, SIXTEENTHS),
        );
      }),
      { numRuns: 40 },
    ));

  it('is so beside a band, over chord changes, swung, and within small hands, too', () =>
    fc.assert(
      fc.property(anyHands(), bpms, fc.constantFrom(...ALL_LEVELS), (both, bpm, level) => {
        const context: Pattern & ThinContext = {
          ...SIXTEENTHS,
          swing: { level: 'sixteenth', ratio: 1.8 },
          sources: [source(SIXTEENTHS, 'kick', 'x..x..x.....x.x.')],
          changes: [0, 840],
        };
        const small = { ...HAND_LIMITS, spanSemitones: 8, strikeGapSec: 0.18, leapPerSec: 24 };
        const thinned = (at: Level) => thinHands(both, at, bpm, context, small);
        const from = level === 5 ? both : thinned((level + 1) as Level);
        expect(withoutAnswers(thinned(level)).map((some) => importance(some, context))).toContain(
          bestByTrying(from, level, bpm, context, small),
        );
      }),
      { numRuns: 30 },
    ));

  it('leaves no hand empty that had something to play', () =>
    fc.assert(
      fc.property(anyHands(), bpms, fc.constantFrom(...ALL_LEVELS), (both, bpm, level) => {
        const kept = thinHands(both, level, bpm, SIXTEENTHS);
        expect(kept.left.length > 0).toBe(both.left.length > 0);
        expect(kept.right.length > 0).toBe(both.right.length > 0);
      }),
      { numRuns: 60 },
    ));

  it('is done when it is done: thinning again changes nothing', () =>
    fc.assert(
      fc.property(anyHands(), bpms, fc.constantFrom(...ALL_LEVELS), (both, bpm, level) => {
        const kept = thinHands(both, level, bpm, SIXTEENTHS);
        expect(thinHands(kept, level, bpm, SIXTEENTHS)).toEqual(kept);
      }),
      { numRuns: 20 },
    ));
});

describe('levels', () => {
  it('ask for more from level to level', () => {
    for (const [easier, harder] of [
      [1, 2],
      [2, 3],
      [3, 4],
      [4, 5],
    ] as const) {
      expect(LEVELS[harder].finestSteps).toBeGreaterThan(LEVELS[easier].finestSteps);
      expect(LEVELS[harder].strikeGapSec).toBeLessThan(LEVELS[easier].strikeGapSec);
      expect(LEVELS[harder].repeatGapSec).toBeLessThan(LEVELS[easier].repeatGapSec);
      expect(LEVELS[harder].leapPerSec).toBeGreaterThan(LEVELS[easier].leapPerSec);
      expect(LEVELS[harder].crossGapSec).toBeLessThan(LEVELS[easier].crossGapSec);
    }
  });

  it.each(shelf())(
    '$pattern.name is whole at level 5 in the middle of its tempo range',
    (entry) => {
      const { pattern: p, tempoRange } = entry;
      const kept = thinHands(p, 5, (tempoRange[0] + tempoRange[1]) / 2, p);
      expect(kept).toEqual({ left: p.left, right: p.right });
    },
  );
});

it('importance is a whole number above 0, greatest on the downbeat', () => {
  const weights = RUN.left.map((hit) => importanceOf({ ...hit, touch: 'ghost' }, RUN));
  expect(weights.every((weight) => Number.isInteger(weight) && weight > 0)).toBe(true);
  expect(Math.max(...weights)).toBe(weights[0]);
  const offGrid = { ...RUN.left[0]!, at: 17, touch: 'ghost' as const };
  expect(importanceOf(offGrid, { ...RUN, meter: meter('4/4') })).toBeGreaterThan(0);
});
