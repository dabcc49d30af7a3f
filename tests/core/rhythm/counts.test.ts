import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COUNT_STYLES, type CountStyle } from '../../../src/core/rhythm/countNames.ts';
import { countSyllables, formatCounts, parseCounts } from '../../../src/core/rhythm/counts.ts';
import { DIVISIONS, type Division, patternSteps } from '../../../src/core/rhythm/pattern.ts';
import { beatStarts } from '../../../src/core/time/meter.ts';
import { errorOf, meter, valueOf } from '../../support/music.ts';

const METERS = [
  '2/4',
  '3/4',
  '4/4',
  '5/4',
  '7/4',
  '2/2',
  '6/8',
  '9/8',
  '12/8',
  '7/8',
  '5/8',
  '8/8 (4+4)',
];

function grid(meterText: string, division: Division, bars = 1) {
  const m = meter(meterText);
  return {
    meter: m,
    bars,
    divisions: Array.from({ length: bars * beatStarts(m).length }, () => division),
  };
}

describe('what is spoken under the grid', () => {
  // docs/sources.md#count-syllables.
  it.each<[string, Division, CountStyle, string]>([
    ['4/4', 2, 'and-a', '1 & 2 & 3 & 4 &'],
    ['4/4', 4, 'and-a', '1 e & a 2 e & a 3 e & a 4 e & a'],
    ['4/4', 3, 'trip-let', '1 trip let 2 trip let 3 trip let 4 trip let'],
    ['4/4', 3, 'la-li', '1 la li 2 la li 3 la li 4 la li'],
    ['4/4', 3, 'and-a', '1 & a 2 & a 3 & a 4 & a'],
    ['3/4', 2, 'and-a', '1 & 2 & 3 &'],
    ['6/8', 3, 'units', '1 2 3 4 5 6'],
    ['6/8', 3, 'la-li', '1 la li 2 la li'],
    // The same syllables in the other meters, common practice.
    ['2/4', 2, 'and-a', '1 & 2 &'],
    ['2/4', 4, 'and-a', '1 e & a 2 e & a'],
    ['3/4', 3, 'trip-let', '1 trip let 2 trip let 3 trip let'],
    ['5/4', 2, 'and-a', '1 & 2 & 3 & 4 & 5 &'],
    ['7/4', 1, 'and-a', '1 2 3 4 5 6 7'],
    ['2/2', 2, 'and-a', '1 & 2 &'],
    ['9/8', 3, 'units', '1 2 3 4 5 6 7 8 9'],
    ['9/8', 3, 'la-li', '1 la li 2 la li 3 la li'],
    ['12/8', 3, 'units', '1 2 3 4 5 6 7 8 9 10 11 12'],
    ['6/8', 3, 'and-a', '1 & a 2 & a'],
    ['12/8', 3, 'la-li', '1 la li 2 la li 3 la li 4 la li'],
    ['6/8', 6, 'units', '1 & 2 & 3 & 4 & 5 & 6 &'],
    ['7/8', 2, 'and-a', '1 & 2 & 3 &'],
    ['4/4', 1, 'units', '1 2 3 4'],
  ])('in %s with %i steps a beat, %s: %s', (meterText, division, style, counts) =>
    expect(countSyllables(grid(meterText, division), style).join(' ')).toBe(counts),
  );

  it('counts units in beats of unequal length', () =>
    expect(
      countSyllables({ meter: meter('7/8'), bars: 1, divisions: [2, 2, 3] }, 'units').join(' '),
    ).toBe('1 2 3 4 5 6 7'));

  it('starts again at 1 in every bar', () =>
    expect(countSyllables(grid('2/4', 1, 2)).join(' ')).toBe('1 2 1 2'));

  it('follows the division of each beat', () =>
    expect(
      countSyllables({ meter: meter('4/4'), bars: 1, divisions: [1, 2, 3, 4] }).join(' '),
    ).toBe('1 2 & 3 & a 4 e & a'));

  it('has one count for every step', () => {
    for (const meterText of METERS)
      for (const division of DIVISIONS)
        for (const style of COUNT_STYLES) {
          const g = grid(meterText, division, 2);
          expect(countSyllables(g, style)).toHaveLength(patternSteps(g).length);
        }
  });
});

function said(text: string, meterText = '4/4', divisions?: Division | Division[]) {
  return valueOf(parseCounts(text, meter(meterText), divisions)).at;
}

describe('said counts', () => {
  it.each<[string, string, number[]]>([
    ['1 & 2 & 3 e & a', '4/4', [0, 240, 480, 720, 960, 1080, 1200, 1320]],
    ['1 2 & 4', '4/4', [0, 480, 720, 1440]],
    ['1 a 2 a', '4/4', [0, 360, 480, 840]],
    ['1 & a 2 & a', '6/8', [0, 240, 480, 720, 960, 1200]],
    ['1 a 2 a', '6/8', [0, 480, 720, 1200]],
    ['1 2 3 4 5 6', '6/8', [0, 240, 480, 720, 960, 1200]],
    ['1 4', '6/8', [0, 720]],
    ['1 2', '6/8', [0, 720]],
    ['1 & 4 & 6', '6/8', [0, 120, 720, 840, 1200]],
    ['1 trip let 2', '4/4', [0, 160, 320, 480]],
    ['1 la li 3 li', '4/4', [0, 160, 320, 960, 1280]],
    ['1 ta e ta & ta a ta', '2/4', [0, 60, 120, 180, 240, 300, 360, 420]],
    ['1 5 7', '7/8', [0, 960, 1440]],
    ['3 & a', '7/8', [960, 1200, 1440]],
    ['1 3 5', '5/4', [0, 960, 1920]],
  ])('“%s” in %s sound at %j', (text, meterText, ticks) =>
    expect(said(text, meterText)).toEqual(ticks),
  );

  it('are silent in brackets', () => expect(said('1 (2) & (3 &) 4')).toEqual([0, 720, 1440]));

  it('mean by “a” what the beat’s usual division says', () => {
    expect(said('1 a 2 a', '4/4', 3)).toEqual([0, 320, 480, 800]);
    expect(said('1 a 2 a', '4/4', [3, 4])).toEqual([0, 320, 480, 840]);
  });

  it('leave a usual division that lacks them', () => {
    const counts = valueOf(parseCounts('1 e 2 &', meter('4/4'), 2));
    expect(counts.at).toEqual([0, 120, 480, 720]);
    expect(counts.divisions).toEqual([4, 2, 2, 2]);
  });

  it('go on to the next bar at a bar line or where numbers start again', () => {
    expect(valueOf(parseCounts('1 3 | 2 4', meter('4/4')))).toMatchObject({
      at: [0, 960, 2400, 3360],
      bars: 2,
    });
    expect(said('1 2 3 1 2 3', '3/4')).toEqual([0, 480, 960, 1440, 1920, 2400]);
    expect(valueOf(parseCounts('| 1 | | 1 |', meter('4/4')))).toMatchObject({
      at: [0, 3840],
      bars: 3,
    });
  });

  it('may begin with an off-beat of the first beat', () =>
    expect(said('& 2 & 3')).toEqual([240, 480, 720, 960]));

  it('are read in other spellings', () =>
    expect(said('1 AND 2 + 3 n 4 E and Uh')).toEqual([
      0, 240, 480, 720, 960, 1200, 1440, 1560, 1680, 1800,
    ]));

  it.each<[string, object]>([
    ['', { kind: 'nothing-said', at: 0 }],
    ['| |', { kind: 'nothing-said', at: 0 }],
    ['1 x 2', { kind: 'unknown-count', text: 'x', at: 2 }],
    ['1 2 5', { kind: 'no-such-beat', text: '5', at: 4, beats: 4 }],
    ['0 1', { kind: 'no-such-beat', text: '0', at: 0, beats: 4 }],
    ['1 (2 & 3', { kind: 'open-bracket', at: 2 }],
    ['1 a e', { kind: 'no-such-step', text: 'a', at: 2 }],
    ['1 & &', { kind: 'no-such-step', text: '&', at: 2 }],
    ['1 e trip', { kind: 'no-such-step', text: 'e', at: 2 }],
  ])('that cannot be understood say where: “%s”', (text, error) =>
    expect(errorOf(parseCounts(text, meter('4/4')))).toMatchObject(error),
  );
});

function spoken(steps: string, division: Division, style?: CountStyle, meterText = '4/4'): string {
  const g = grid(meterText, division);
  const at = patternSteps(g).flatMap((step, i) => (steps[i] === 'x' ? [step.at] : []));
  return formatCounts(at, g, style);
}

describe('attacks as they are spoken', () => {
  it.each<[string, Division, string]>([
    ['x.x.x.x.', 2, '1 2 3 4'],
    ['x..xx...', 2, '1 (2) & 3'],
    ['x..xx..xx..xx..x', 4, '1 a 2 a 3 a 4 a'],
    ['.x..............', 4, '(1) e'],
    ['x.x.........', 3, '1 a'],
    ['...x............................', 8, '(1) (e) ta'],
    ['........', 2, '(1)'],
  ])('%s with %i steps a beat: %s', (steps, division, counts) =>
    expect(spoken(steps, division)).toBe(counts),
  );

  it('in 6/8 by eighths', () => {
    expect(spoken('x..xx.', 3, 'units', '6/8')).toBe('1 4 5');
    expect(spoken('x..x........', 6, 'units', '6/8')).toBe('1 (2) & (6)');
    expect(spoken('xx....', 3, 'units', '6/8')).toBe('1 2 (6)');
  });

  it('between steps are spoken on the nearer, the earlier of two', () => {
    const g = grid('4/4', 2);
    expect(formatCounts([10, 360, 370, 1900], g)).toBe('1 & 2 (4) &');
  });

  it('of several bars are divided by bar lines', () =>
    expect(formatCounts([0, 3840], grid('4/4', 1, 3))).toBe('1 | (1) | 1'));
});

it('reading gives back what was spoken, in every meter, division and style', () =>
  fc.assert(
    fc.property(
      fc.constantFrom(...METERS),
      fc.array(fc.constantFrom(...DIVISIONS), { minLength: 8, maxLength: 8 }),
      fc.constantFrom(...COUNT_STYLES),
      fc.array(fc.oneof({ weight: 3, arbitrary: fc.constant(false) }, fc.boolean()), {
        minLength: 96,
        maxLength: 96,
      }),
      fc.integer({ min: 1, max: 2 }),
      (meterText, divisions, style, sounds, bars) => {
        const m = meter(meterText);
        const beats = bars * beatStarts(m).length;
        const plain = (i: number) => (style === 'units' ? undefined : divisions[i % 8]!);
        const g = {
          meter: m,
          bars,
          divisions: Array.from(
            { length: beats },
            (_, i) => plain(i) ?? unitDivision(m, i, divisions),
          ),
        };
        const at = patternSteps(g).flatMap((step, i) => (sounds[i % 96] ? [step.at] : []));
        const read = valueOf(parseCounts(formatCounts(at, g, style), m, g.divisions));
        expect(read.at).toEqual(at);
      },
    ),
    { numRuns: 400 },
  ));

/** A division of one or two steps to each unit, as counting by units needs it. */
function unitDivision(
  m: ReturnType<typeof meter>,
  beat: number,
  divisions: readonly Division[],
): Division {
  if (m.unit < 8) return divisions[beat % 8]!;
  const units = m.groups[beat % m.groups.length]!;
  return DIVISIONS.find((d) => d === units * (divisions[beat % 8]! > 2 ? 2 : 1)) ?? 1;
}
