import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BarSpacing,
  barSpacing,
  stretched,
} from '../../../../src/ui/parts/notation/barSpacing.ts';
import { fittingSheet } from '../../../../src/ui/parts/notation/fittingSheet.ts';
import type { Notation } from '../../../../src/ui/parts/notation/notation.ts';
import { numberOf, type SystemHeights } from '../../../../src/ui/parts/notation/systemHeights.ts';
import {
  columnX,
  type SheetSystem,
  sheetSystems,
} from '../../../../src/ui/parts/notation/systems.ts';
import { writtenBars } from '../../../../src/ui/parts/notation/writtenBars.ts';
import { keyNamed } from '../../../support/music.ts';
import { pattern } from '../../../support/patterns.ts';
import { barsOf, notationOf } from '../../../support/sheets.ts';

function barsPerSystem(systems: readonly SheetSystem[]): number[] {
  return systems.map(({ bars }) => bars.length);
}

/** Where the first bar begins under a key signature. */
function firstBarX(key: string): number {
  return sheetSystems(barsOf(1, 'C---', { key: keyNamed(key) }), 700)[0]!.bars[0]!.x;
}

/** How far chord symbols stand over the upper staff. */
function chordRoom({ heights }: SheetSystem): number {
  return heights.right - heights.chords;
}

/** The heights of two bars, the first with a chord symbol, with words over one of them. */
function heightsWithWords(bar: number): SystemHeights {
  const words = [{ bar, text: 'ending' }];
  return sheetSystems(barsOf(2, 'C---', { words }), 900)[0]!.heights;
}

/** How far the staves stand apart when the hands play this over C, then B. */
function stavesApart(left: string, right: string, touch: 'plain' | 'accent'): number {
  const p = pattern('4/4', { left, right });
  const touched = { ...p, right: p.right.map((hit) => ({ ...hit, touch })) };
  const { heights } = sheetSystems(notationOf(touched, '| C / B / |'), 700)[0]!;
  return heights.left - heights.right;
}

/** The springs and rods of a bar in which the right hand plays this. */
function spacingOf(right: string, chart = '| C |'): BarSpacing {
  const { sheet } = notationOf(pattern('4/4', { right }), chart);
  return barSpacing(writtenBars(sheet, keyNamed('C'))[0]!, 'in-time');
}

/** Rhythms of eighths over a few bars in any width. */
const rhythms = fc.record({
  signs: fc
    .array(fc.constantFrom('C', 'T', '-', '.'), { minLength: 8, maxLength: 48 })
    .map((signs) => signs.slice(0, signs.length - (signs.length % 8))),
  width: fc.integer({ min: 250, max: 1600 }),
  chord: fc.constantFrom('C', 'B♭m7', 'F♯maj7'),
});

function notationFor({ signs, chord }: { readonly signs: readonly string[]; chord: string }) {
  const bars = signs.length / 8;
  const p = pattern('4/4', { right: signs.join('') }, { bars });
  return notationOf(p, `|${` ${chord} |`.repeat(bars)}`);
}

describe('systems', () => {
  it('hold every bar once, in order, without gaps', () =>
    fc.assert(
      fc.property(rhythms, (rhythm) => {
        const notation = notationFor(rhythm);
        const bars = sheetSystems(notation, rhythm.width).flatMap((system) => system.bars);
        expect(bars.map(({ index }) => index)).toEqual(notation.sheet.bars.map((_, i) => i));
      }),
      { numRuns: 60 },
    ));

  it('are no wider than the width, unless one bar alone is', () =>
    fc.assert(
      fc.property(rhythms, (rhythm) => {
        for (const system of sheetSystems(notationFor(rhythm), rhythm.width))
          if (system.bars.length > 1) expect(system.width).toBeLessThanOrEqual(rhythm.width + 1e-6);
      }),
      { numRuns: 60 },
    ));

  it('have columns in order of time, inside their bars, ink apart', () =>
    fc.assert(
      fc.property(rhythms, (rhythm) => {
        for (const system of sheetSystems(notationFor(rhythm), rhythm.width))
          for (const { x, endX, columns } of system.bars) {
            const edges = columns.flatMap((c) => [c.x - c.left, c.x + c.right]);
            expect(edges).toEqual(edges.toSorted((a, b) => a - b));
            expect(edges[0]).toBeGreaterThan(x);
            expect(edges.at(-1)).toBeLessThan(endX);
          }
      }),
      { numRuns: 60 },
    ));

  it('fill the width when there is music for it', () => {
    const systems = sheetSystems(barsOf(4), 700);
    expect(systems.length).toBeGreaterThan(1);
    for (const { width } of systems) expect(width).toBeCloseTo(700, 3);
  });

  it('share bars out evenly instead of leaving one over', () => {
    expect(barsPerSystem(sheetSystems(barsOf(4), 850))).toEqual([2, 2]);
    expect(barsPerSystem(sheetSystems(barsOf(6), 1150))).toEqual([3, 3]);
  });

  it('are one where everything fits, and stop short of a width they would look empty in', () => {
    const [only, ...others] = sheetSystems(barsOf(1, 'C---'), 2000);
    expect(others).toEqual([]);
    expect(only!.width).toBeLessThan(1000);
  });

  it('show the time signature at the start and where it changes only', () => {
    const two = sheetSystems(barsOf(4), 700);
    expect(two.flatMap(({ bars }) => bars.map(({ meterX }) => meterX !== undefined))).toEqual([
      true,
      false,
      false,
      false,
    ]);
    const chords = sheetSystems(barsOf(1, 'C---', { kind: 'chords' }), 700);
    expect(chords[0]!.bars[0]!.meterX).toBeUndefined();
  });

  it('begin farther right under a longer key signature', () => {
    expect(firstBarX('D') - firstBarX('C')).toBeCloseTo(firstBarX('E') - firstBarX('D'), 6);
    expect(firstBarX('D')).toBeGreaterThan(firstBarX('C'));
  });

  it('keep room for repeat signs', () => {
    const plain = sheetSystems(barsOf(1), 700)[0]!.bars[0]!;
    const repeat = { firstBar: 0, lastBar: 0 };
    const repeated = sheetSystems(barsOf(1, 'CCCCCCCC', { repeated: repeat }), 700)[0]!.bars[0]!;
    expect([repeated.opens, repeated.closes]).toEqual([true, true]);
    expect(repeated.notesX - repeated.x).toBeGreaterThan(plain.notesX - plain.x);
    expect(repeated.endX - repeated.columns.at(-1)!.x).toBeGreaterThan(
      plain.endX - plain.columns.at(-1)!.x,
    );
  });

  it('have one height for chord symbols that is over the highest note of them all', () => {
    const [low] = sheetSystems(barsOf(1, 'B---'), 700);
    const high = notationOf(pattern('4/4', { right: '6---' }), '| B |');
    const [above] = sheetSystems(high, 700);
    expect(chordRoom(above!)).toBeGreaterThan(chordRoom(low!));
  });

  it('have words in the place of chord symbols, over them only where a bar has both', () => {
    expect(heightsWithWords(1)).toEqual(sheetSystems(barsOf(2, 'C---'), 900)[0]!.heights);
    expect(heightsWithWords(0).chords).toBeGreaterThan(heightsWithWords(1).chords);
    expect(heightsWithWords(0).words).toBeLessThan(heightsWithWords(0).chords);
  });

  it('are numbered by their first bar from the second on, where there is a meter', () => {
    const numbers = (notation: Notation) =>
      sheetSystems(notation, 700).map(({ bars }) => numberOf(bars, notation.kind));
    expect(numbers(barsOf(4))).toEqual([undefined, 3]);
    const row = numbers(barsOf(20, 'C---', { kind: 'chords' }));
    expect(row.length).toBeGreaterThan(1);
    expect(new Set(row)).toEqual(new Set([undefined]));
  });

  it('reach as far as their words', () => {
    const words = [{ bar: 0, text: 'sixteenths swing: easy swing 1.5 : 1, and on' }];
    const [system] = sheetSystems(barsOf(1, 'C---', { words }), 900);
    expect(system!.reach).toBeGreaterThan(system!.width);
  });

  it('set staves farther apart where the hands come near each other', () => {
    expect(stavesApart('R---', 'B---', 'plain')).toBe(105);
    expect(stavesApart('..X-', 'B---', 'accent')).toBeGreaterThan(105);
  });
});

describe('the spacing of a bar', () => {
  it('gives like values like distances, and longer ones longer', () => {
    const places = stretched(spacingOf('C-C-C---'), 1.5);
    const distances = places.slice(1).map((place, i) => place - places[i]!);
    expect(distances[1]).toBeCloseTo(distances[0]!, 6);
    const halves = stretched(spacingOf('C-C-C---', '| C |'), 1.5);
    expect(halves.at(-1)! - halves[2]!).toBeGreaterThan(distances[0]!);
  });

  it('grows with the factor and never lets ink touch', () =>
    fc.assert(
      fc.property(rhythms, fc.double({ min: 0, max: 3, noNaN: true }), (rhythm, factor) => {
        const [first] = writtenBars(notationFor(rhythm).sheet, keyNamed('C'));
        const spacing = barSpacing(first!, 'in-time');
        const [tight, here] = [stretched(spacing, 0), stretched(spacing, factor)];
        for (const [i, place] of here.entries()) expect(place).toBeGreaterThanOrEqual(tight[i]!);
        for (const { from, to, least } of spacing.rods)
          expect(here[to]! - here[from]!).toBeGreaterThanOrEqual(least - 1e-9);
      }),
      { numRuns: 60 },
    ));

  it('leaves room for accidentals and for long chord names', () => {
    expect(spacingOf('CCCCCCCC', '| Cm |').leadIn).toBeGreaterThan(spacingOf('CCCCCCCC').leadIn);
    const width = (chart: string) => stretched(spacingOf('CCCCCCCC', chart), 0).at(-1)!;
    expect(width('| C / Cm / |')).toBeGreaterThan(width('| C / C / |'));
    expect(width('| F♯m7♭5 / E♭maj7 / |')).toBeGreaterThan(width('| F♯m7♭5 |'));
  });
});

describe('a sheet fitted to a room', () => {
  it('is as large as fits, and no smaller than legible', () => {
    const one = barsOf(1);
    const roomy = fittingSheet(one, { width: 1000, height: 800 });
    const narrow = fittingSheet(one, { width: 320, height: 800 });
    const flat = fittingSheet(barsOf(8), { width: 700, height: 100 });
    expect(roomy.pxPerUnit).toBeGreaterThan(narrow.pxPerUnit);
    expect(flat.pxPerUnit).toBe(0.9);
  });

  it('never needs more than the width', () =>
    fc.assert(
      fc.property(rhythms, (rhythm) => {
        const width = rhythm.width + 400;
        const sheet = fittingSheet(notationFor(rhythm), { width, height: 500 });
        expect(sheet.width * sheet.pxPerUnit).toBeLessThanOrEqual(width + 1e-6);
      }),
      { numRuns: 40 },
    ));

  it('has a place for every tick that is written', () => {
    const [system] = sheetSystems(barsOf(1, 'C.C.C.C.'), 700);
    const bar = system!.bars[0]!;
    const places = [0, 480, 960, 1440].map((tick) => columnX(bar, tick));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(new Set(places).size).toBe(4);
  });
});
