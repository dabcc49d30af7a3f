import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coverage,
  density,
  leadingHand,
  metricWeights,
  syncopation,
} from '../../../src/core/rhythm/measures.ts';
import { DIVISIONS, type Division } from '../../../src/core/rhythm/pattern.ts';
import { beatStarts } from '../../../src/core/time/meter.ts';
import { euclideanRhythm } from '../../support/euclid.ts';
import { meter } from '../../support/music.ts';
import { hands, pattern, source } from '../../support/patterns.ts';

describe('metric weights', () => {
  // Longuet-Higgins & Lee 1984 as coded in library SynPy (docs/sources.md#metric-weights).
  it.each<[string, Division, number[]]>([
    ['4/4', 2, [0, -3, -2, -3, -1, -3, -2, -3]],
    ['4/4', 4, [0, -4, -3, -4, -2, -4, -3, -4, -1, -4, -3, -4, -2, -4, -3, -4]],
    ['4/4', 3, [0, -3, -3, -2, -3, -3, -1, -3, -3, -2, -3, -3]],
    ['3/4', 2, [0, -2, -1, -2, -1, -2]],
    ['6/8', 3, [0, -2, -2, -1, -2, -2]],
    ['12/8', 3, [0, -3, -3, -2, -3, -3, -1, -3, -3, -2, -3, -3]],
    // The same rule in the other meters, computed.
    ['2/4', 2, [0, -2, -1, -2]],
    ['5/4', 1, [0, -2, -2, -1, -2]],
    ['7/4', 1, [0, -3, -2, -3, -1, -2, -2]],
    ['9/8', 3, [0, -2, -2, -1, -2, -2, -1, -2, -2]],
    ['2/2', 4, [0, -3, -2, -3, -1, -3, -2, -3]],
    ['6/8', 6, [0, -3, -2, -3, -2, -3, -1, -3, -2, -3, -2, -3]],
    ['4/4', 1, [0, -2, -1, -2]],
  ])('of %s with %i steps a beat', (text, division, weights) =>
    expect(metricWeights(meter(text), division)).toEqual(weights),
  );

  it('follow the grouping of the meter', () => {
    expect(metricWeights(meter('3+2/4'), 1)).toEqual([0, -2, -2, -1, -2]);
    expect(metricWeights(meter('2+3/4'), 1)).toEqual([0, -2, -1, -2, -2]);
    expect(metricWeights(meter('7/8'), [2, 2, 3])).toEqual([0, -2, -1, -2, -1, -2, -2]);
  });

  it('take each beat as it is divided', () =>
    expect(metricWeights(meter('4/4'), [1, 2, 3, 4])).toEqual([
      0, -2, -3, -1, -3, -3, -2, -4, -3, -4,
    ]));

  it('are one for each step, strongest on the downbeat and stronger on beats than between', () => {
    for (const text of ['2/4', '3/4', '4/4', '5/4', '7/4', '2/2', '6/8', '9/8', '12/8', '7/8'])
      for (const division of DIVISIONS) {
        const weights = metricWeights(meter(text), division);
        const beats = beatStarts(meter(text)).length;
        expect(weights).toHaveLength(beats * division);
        expect(weights[0]).toBe(0);
        expect(weights.slice(1).every((weight) => weight < 0)).toBe(true);
        const onBeats = weights.filter((_, step) => step % division === 0);
        const between = weights.filter((_, step) => step % division !== 0);
        expect(Math.min(...onBeats)).toBeGreaterThan(Math.max(...between, -100));
      }
  });
});

const SIXTEENTHS = { meter: meter('4/4'), bars: 1, divisions: [4, 4, 4, 4] } as const;
const EIGHTHS = { meter: meter('4/4'), bars: 1, divisions: [2, 2, 2, 2] } as const;

function sixteenths(steps: readonly number[]) {
  return steps.map((step) => ({ at: step * 120 }));
}

function eighths(steps: readonly number[]) {
  return steps.map((step) => ({ at: step * 240 }));
}

describe('syncopation', () => {
  // Timelines: Gomez, Melvin, Rappaport & Toussaint 2005; values computed with library SynPy
  // (docs/sources.md#syncopation, one bar and cycle).
  it.each([
    ['Shiko', [0, 4, 6, 10, 12], 2, 2],
    ['Son 3-2', [0, 3, 6, 10, 12], 4, 4],
    ['Rumba 3-2', [0, 3, 7, 10, 12], 6, 6],
    ['Soukous', [0, 3, 6, 10, 11], 6, 7],
    ['Gahu', [0, 3, 6, 10, 14], 5, 5],
    ['Bossa nova', [0, 3, 6, 10, 13], 6, 7],
  ])('of %s', (_name, steps, once, cycle) => {
    expect(syncopation(sixteenths(steps), SIXTEENTHS, 'once')).toBe(once);
    expect(syncopation(sixteenths(steps), SIXTEENTHS)).toBe(cycle);
  });

  // Other values computed the same way (docs/sources.md#syncopation).
  it.each([
    ['tresillo twice', [0, 3, 6], 2, 2],
    ['cinquillo', [0, 2, 3, 5, 6], 2, 2],
    ['the Charleston', [0, 3], 2, 3],
    ['four quarters', [0, 2, 4, 6], 0, 0],
  ])('of %s', (_name, steps, once, cycle) => {
    expect(syncopation(eighths(steps), EIGHTHS, 'once')).toBe(once);
    expect(syncopation(eighths(steps), EIGHTHS)).toBe(cycle);
  });

  it('of the off-beat eighths alone', () => {
    const attacks = sixteenths([2, 6, 10, 14]);
    expect(syncopation(attacks, SIXTEENTHS, 'once')).toBe(4);
    expect(syncopation(attacks, SIXTEENTHS)).toBe(7);
  });

  it('of beats 2 and 4 alone', () => {
    expect(syncopation(eighths([2, 6]), EIGHTHS, 'once')).toBe(1);
    expect(syncopation(eighths([2, 6]), EIGHTHS)).toBe(3);
  });

  // The library SynPy's own documented example (docs/sources.md#syncopation): 10010110 in 2/4.
  it('of 10010110 in 2/4', () => {
    const grid = { meter: meter('2/4'), bars: 1, divisions: [4, 4] } as const;
    expect(syncopation(sixteenths([0, 3, 5, 6]), grid, 'once')).toBe(2);
  });

  it('of nothing is none', () => expect(syncopation([], SIXTEENTHS)).toBe(0));

  it('adds up over bars, each answering to the bar before', () => {
    const two = { ...EIGHTHS, bars: 2, divisions: [2, 2, 2, 2, 2, 2, 2, 2] as Division[] };
    const twice = eighths([2, 6, 10, 14]);
    expect(syncopation(twice, two)).toBe(6);
    expect(syncopation(twice, two, 'once')).toBe(4);
  });

  it('is not changed by dividing beats more finely', () =>
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(7)), (steps) => {
        const attacks = eighths(steps.toSorted((a, b) => a - b));
        expect(syncopation(attacks, SIXTEENTHS)).toBe(syncopation(attacks, EIGHTHS));
      }),
    ));
});

describe('Euclidean rhythms', () => {
  // Toussaint 2005, "The Euclidean Algorithm Generates Traditional Musical Rhythms" (docs/sources.md#euclidean-rhythms).
  it.each([
    [2, 5, 'x.x..'],
    [3, 5, 'x.x.x'],
    [3, 7, 'x.x.x..'],
    [4, 7, 'x.x.x.x'],
    [5, 7, 'x.xx.xx'],
    [3, 8, 'x..x..x.'],
    [5, 8, 'x.xx.xx.'],
    [4, 9, 'x.x.x.x..'],
    [5, 9, 'x.x.x.x.x'],
    [4, 11, 'x..x..x..x.'],
    [5, 11, 'x.x.x.x.x..'],
    [5, 12, 'x..x.x..x.x.'],
    [7, 12, 'x.xx.x.xx.x.'],
    [5, 16, 'x..x..x..x..x...'],
    [7, 16, 'x..x.x.x..x.x.x.'],
    [9, 16, 'x.xx.x.x.xx.x.x.'],
    [11, 24, 'x..x.x.x.x.x..x.x.x.x.x.'],
    [13, 24, 'x.xx.x.x.x.x.xx.x.x.x.x.'],
  ])('E(%i,%i) is %s', (attacks, steps, text) =>
    expect(euclideanRhythm(attacks, steps)).toBe(text),
  );

  // For these the paper prints a rotation (docs/sources.md#euclidean-rhythms).
  it.each([
    [2, 3, 'x.x'],
    [3, 4, 'x.xx'],
    [5, 6, 'x.xxxx'],
    [7, 8, 'x.xxxxxx'],
  ])('E(%i,%i) is %s turned', (attacks, steps, text) => {
    const turned = Array.from({ length: steps }, (_, i) => text.slice(i) + text.slice(0, i));
    expect(turned).toContain(euclideanRhythm(attacks, steps));
  });

  it('tresillo is as syncopated as its table says', () => {
    const steps = euclideanRhythm(3, 8)
      .split('')
      .flatMap((sign, i) => (sign === 'x' ? [i] : []));
    expect(syncopation(eighths(steps), EIGHTHS)).toBe(2);
  });
});

describe('coverage', () => {
  const grid = pattern('4/4', { left: '........' });
  const kick = source(grid, 'kick', 'x...x...');
  const snare = source(grid, 'snare', '..x...x.');

  it('is the share of the band’s weight that the hands strike', () => {
    const found = coverage([kick, snare], hands(grid, { left: 'R...R...', right: '..C.....' }));
    expect(found.share).toBe(0.75);
    expect(found.shares).toEqual({ kick: 1, snare: 0.5 });
    expect(found.gaps).toEqual([{ sourceId: 'snare', at: 1440, weight: 1 }]);
  });

  it('weighs strokes by strength and presence and lists the heaviest gap first', () => {
    const weighed = {
      ...kick,
      strokes: [
        { ...kick.strokes[0]!, strength: 0.5, presence: 0.5 },
        { ...kick.strokes[1]!, strength: 0.75 },
      ],
    };
    const found = coverage([weighed], hands(grid, {}));
    expect(found.share).toBe(0);
    expect(found.gaps.map((gap) => gap.weight)).toEqual([0.75, 0.25]);
    expect(coverage([weighed], hands(grid, { left: '....R...' })).share).toBe(0.75);
  });

  it('is complete where the band plays nothing', () =>
    expect(coverage([], hands(grid, { left: 'R.......' }))).toEqual({
      share: 1,
      shares: {},
      gaps: [],
    }));
});

it('density counts attacks to a felt beat', () => {
  expect(density(eighths([0, 1, 2, 3, 4, 5]), EIGHTHS)).toBe(1.5);
  expect(density(eighths([0, 3]), { meter: meter('6/8'), bars: 1 })).toBe(1);
  expect(density([], EIGHTHS)).toBe(0);
});

it('the hand that strikes more often leads', () => {
  const grid = pattern('4/4', { left: '........' });
  expect(leadingHand(hands(grid, { left: 'R...R...', right: '..C.....' }))).toBe('left');
  expect(leadingHand(hands(grid, { left: 'R.......', right: '..C...C.' }))).toBe('right');
  expect(leadingHand(hands(grid, { left: 'R.......', right: '..C.....' }))).toBe('both');
});
