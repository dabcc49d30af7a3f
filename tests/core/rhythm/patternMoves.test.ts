import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doubleNoteValues, halveNoteValues } from '../../../src/core/rhythm/noteValues.ts';
import { type Pattern, patternTicks } from '../../../src/core/rhythm/pattern.ts';
import {
  accentEvery,
  clearHits,
  copyBar,
  copyBeat,
  copyRhythm,
  fillBetween,
  mirrorHands,
  shiftHits,
  withoutEnding,
} from '../../../src/core/rhythm/patternMoves.ts';
import { pattern, source, ticksOf } from '../../support/patterns.ts';
import { shelf } from '../../support/shelf.ts';

const twoBeat = pattern('4/4', { left: 'R-..5-..', right: '..C...C.' });
const PATTERNS = shelf().map((entry) => entry.pattern);

describe('shifting', () => {
  it('moves the hits of the hands that are meant, round the end', () => {
    const shifted = shiftHits(twoBeat, 'right', 600);
    expect(ticksOf(shifted.right)).toEqual([120, 1080]);
    expect(shifted.left).toEqual(twoBeat.left);
    expect(ticksOf(shiftHits(twoBeat, 'both', -240).left)).toEqual([720, 1680]);
  });

  it('there and back gives the same pattern', () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...PATTERNS),
        fc.integer({ min: -9000, max: 9000 }),
        fc.constantFrom('left' as const, 'right' as const, 'both' as const),
        (p, by, which) => {
          expect(shiftHits(shiftHits(p, which, by), which, -by)).toEqual(p);
        },
      ),
    ));
});

describe('mirroring', () => {
  it('gives each hand the other’s rhythm and counterpart tones', () => {
    const mirrored = mirrorHands(pattern('4/4', { left: 'R-..5-..', right: '..C...T.' }));
    expect(mirrored.left.map(({ at, play }) => [at, play])).toEqual([
      [480, ['root']],
      [1440, ['octave']],
    ]);
    expect(mirrored.right.map(({ at, length, play }) => [at, length, play])).toEqual([
      [0, 480, ['all']],
      [960, 480, ['voice-3']],
    ]);
  });

  it.each(PATTERNS)('twice gives $name back', (p) =>
    expect(mirrorHands(mirrorHands(p))).toEqual(p),
  );

  it('can give one hand’s rhythm to the other with its usual tones', () => {
    const copied = copyRhythm(twoBeat, 'left');
    expect(copied.left).toEqual(twoBeat.left);
    expect(copied.right.map(({ at, play }) => [at, play])).toEqual([
      [0, ['all']],
      [960, ['all']],
    ]);
    expect(copyRhythm(twoBeat, 'right').left[0]).toMatchObject({ at: 480, play: ['root'] });
  });
});

describe('note values', () => {
  it('doubled take twice the bars', () => {
    const doubled = doubleNoteValues({
      ...twoBeat,
      sources: [source(twoBeat, 'kick', 'x...x...')],
    });
    expect(doubled.bars).toBe(2);
    expect(ticksOf(doubled.left)).toEqual([0, 1920]);
    expect(doubled.left[0]?.length).toBe(960);
    expect(ticksOf(doubled.sources[0]!.strokes)).toEqual([0, 1920]);
    expect(doubled.divisions).toHaveLength(8);
  });

  it('halved take half the bars, played twice where there is one', () => {
    const halved = halveNoteValues(twoBeat);
    expect(halved.bars).toBe(1);
    expect(ticksOf(halved.left)).toEqual([0, 480, 960, 1440]);
    expect(halved.divisions).toEqual([2, 2, 2, 2]);
  });

  it('halved find a division that holds every hit', () => {
    const eighths = pattern('4/4', { left: 'RRRRRRRR' });
    expect(halveNoteValues(eighths).divisions).toEqual([4, 4, 4, 4]);
    const mixed = pattern('2/4', { left: 'RRRRR' }, { divisions: [2, 3] });
    expect(halveNoteValues(mixed).divisions).toEqual([6, 6]);
  });

  it.each(PATTERNS)('doubled, then halved give $name back', (p) =>
    expect(halveNoteValues(doubleNoteValues(p))).toEqual(p),
  );

  it('halved, then doubled give the same hits back where the bars are even', () => {
    const even = PATTERNS.filter((p) => p.bars % 2 === 0);
    expect(even.length).toBeGreaterThan(0);
    for (const p of even) {
      const { left, right, sources, bars } = doubleNoteValues(halveNoteValues(p));
      expect({ left, right, sources, bars }).toEqual({
        left: p.left,
        right: p.right,
        sources: p.sources,
        bars: p.bars,
      });
    }
  });
});

describe('copying and clearing', () => {
  it('copies a beat with its division onto another', () => {
    const p = pattern('4/4', { left: 'RRR.....' }, { divisions: [3, 1, 2, 2] });
    const copied = copyBeat(p, 'left', 0, 3);
    expect(ticksOf(copied.left)).toEqual([0, 160, 320, 1440, 1600, 1760]);
    expect(copied.divisions).toEqual([3, 1, 2, 3]);
    expect(copyBeat(p, 'left', 0, 4)).toBe(p);
  });

  it('copies of a longer beat what the shorter one holds', () => {
    const p = pattern('7/8', { left: '....RRR' }, { divisions: [2, 2, 3] });
    expect(ticksOf(copyBeat(p, 'left', 2, 0).left)).toEqual([0, 240, 960, 1200, 1440]);
  });

  it('replaces what the other beat had', () =>
    expect(ticksOf(copyBeat(twoBeat, 'left', 1, 0).left)).toEqual([960]));

  it('copies a bar with its divisions onto another', () => {
    const p = pattern('2/4', { left: 'RRRR...' }, { bars: 2, divisions: [3, 1, 1, 2] });
    const copied = copyBar(p, 'both', 0, 1);
    expect(ticksOf(copied.left)).toEqual([0, 160, 320, 480, 960, 1120, 1280, 1440]);
    expect(copied.divisions).toEqual([3, 1, 3, 1]);
    expect(copyBar(p, 'both', 0, 2)).toBe(p);
  });

  it('clears the hits of a span', () => {
    expect(ticksOf(clearHits(twoBeat, 'both', 960, 1920).right)).toEqual([480]);
    expect(ticksOf(clearHits(twoBeat, 'left', 0, 480).left)).toEqual([960]);
  });
});

describe('filling and accenting', () => {
  it('fills empty steps after a hit with ghosts of it', () => {
    const filled = fillBetween(pattern('4/4', { left: '..R-5---' }), 'left');
    expect(filled.left.map(({ at, length, play, touch }) => [at, length, play[0], touch])).toEqual([
      [480, 240, 'root', 'plain'],
      [720, 240, 'root', 'ghost'],
      [960, 240, 'fifth', 'plain'],
      [1200, 240, 'fifth', 'ghost'],
      [1440, 240, 'fifth', 'ghost'],
      [1680, 240, 'fifth', 'ghost'],
    ]);
  });

  it('fills within a span only', () =>
    expect(ticksOf(fillBetween(twoBeat, 'left', 0, 480).left)).toEqual([0, 240, 960]));

  it('accents every nth hit and takes other accents back', () => {
    const p = pattern('4/4', { right: 'CCCCCCCC' });
    const touched: Pattern = {
      ...p,
      right: p.right.map((hit, i) => ({ ...hit, touch: (['accent', 'ghost'] as const)[i % 2]! })),
    };
    const signs = { ghost: 'g', plain: '-', accent: '>' };
    const touches = (q: Pattern) => q.right.map((hit) => signs[hit.touch]).join('');
    expect(touches(accentEvery(touched, 'right', 3))).toBe('>g->-g>g');
    expect(touches(accentEvery(touched, 'right', 4, 2))).toBe('-g>g-g>g');
  });
});

it('a pattern can be played without its ending', () => {
  const ended = pattern('4/4', { left: 'R---', ending: { left: '5---' } });
  expect('ending' in withoutEnding(ended)).toBe(false);
  expect(patternTicks(withoutEnding(ended))).toBe(1920);
});
