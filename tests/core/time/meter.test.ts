import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  barTicks,
  beatLengths,
  beatStarts,
  formatMeter,
  groupStarts,
  type Meter,
  parseMeter,
  sameMeter,
  tempoBeatTicks,
  unitTicks,
} from '../../../src/core/time/meter.ts';
import { errorOf, meter, valueOf } from '../../support/music.ts';

/** Groups, bar length and felt beats: common practice; ticks computed with 480 to the quarter. */
const METERS: ReadonlyArray<
  readonly [string, groups: string, bar: number, beats: string, tempoBeat: number]
> = [
  ['2/4', '2', 960, '480 480', 480],
  ['3/4', '3', 1440, '480 480 480', 480],
  ['4/4', '2 2', 1920, '480 480 480 480', 480],
  ['5/4', '3 2', 2400, '480 480 480 480 480', 480],
  ['7/4', '4 3', 3360, '480 480 480 480 480 480 480', 480],
  ['2/2', '2', 1920, '960 960', 960],
  ['6/8', '3 3', 1440, '720 720', 720],
  ['9/8', '3 3 3', 2160, '720 720 720', 720],
  ['12/8', '3 3 3 3', 2880, '720 720 720 720', 720],
  ['3/8', '3', 720, '720', 720],
  ['5/8', '3 2', 1200, '720 480', 480],
  ['7/8', '2 2 3', 1680, '480 480 720', 480],
  ['8/8', '3 3 2', 1920, '720 720 480', 480],
];

describe('meters', () => {
  it.each(METERS)('%s is grouped %s and lasts %i ticks', (text, groups, bar, beats, tempoBeat) => {
    const m = meter(text);
    expect(m.groups.join(' ')).toBe(groups);
    expect(barTicks(m)).toBe(bar);
    expect(beatLengths(m).join(' ')).toBe(beats);
    expect(tempoBeatTicks(m)).toBe(tempoBeat);
  });

  it.each([
    ['6/8', [0, 720], [0, 720]],
    ['5/4', [0, 480, 960, 1440, 1920], [0, 1440]],
    ['7/8', [0, 480, 960], [0, 480, 960]],
    ['4/4', [0, 480, 960, 1440], [0, 960]],
  ])('%s has its beats and its stresses where they are counted', (text, beats, groups) => {
    expect(beatStarts(meter(text))).toEqual(beats);
    expect(groupStarts(meter(text))).toEqual(groups);
  });

  it.each(['7/8 (3+2+2)', '7/8(3+2+2)', '3+2+2/8', ' 3+2+2/8 ', '3+2+2 / 8'])(
    '%s has groups of its own',
    (text) => expect(meter(text)).toEqual({ beats: 7, unit: 8, groups: [3, 2, 2] }),
  );

  it('are printed with groups only where these are unusual', () => {
    expect(formatMeter(meter('7/8'))).toBe('7/8');
    expect(formatMeter(meter('7/8 (2+3+2)'))).toBe('2+3+2/8');
    expect(formatMeter({ beats: 4, unit: 4, groups: [4] })).toBe('4/4(4)');
  });

  it('are the same only with the same groups', () => {
    expect(sameMeter(meter('7/8'), meter('7/8 (2+2+3)'))).toBe(true);
    expect(sameMeter(meter('7/8'), meter('3+2+2/8'))).toBe(false);
  });
});

describe('texts that are no meter', () => {
  it.each([
    ['', { kind: 'not-a-meter', text: '' }],
    ['4', { kind: 'not-a-meter', text: '4' }],
    ['4/', { kind: 'not-a-meter', text: '4/' }],
    ['0/4', { kind: 'not-a-meter', text: '0/4' }],
    ['33/8', { kind: 'not-a-meter', text: '33/8' }],
    ['4/5', { kind: 'unit', text: '4/5', unit: 5 }],
    ['7/8 (3+3)', { kind: 'groups-do-not-add-up', text: '7/8 (3+3)', beats: 7 }],
    ['4/4 (0+4)', { kind: 'groups-do-not-add-up', text: '4/4 (0+4)', beats: 4 }],
  ])('%j', (text, error) => expect(errorOf(parseMeter(text))).toEqual(error));
});

/** Any meter, with usual or unusual groups. */
function meters(): fc.Arbitrary<Meter> {
  return fc
    .record({
      unit: fc.constantFrom(2, 4, 8, 16),
      groups: fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 6 }),
    })
    .map(({ unit, groups }) => ({ unit, groups, beats: groups.reduce((a, b) => a + b, 0) }));
}

describe('every meter', () => {
  it('is read back from its text', () =>
    fc.assert(
      fc.property(meters(), (m) => {
        expect(valueOf(parseMeter(formatMeter(m)))).toEqual(m);
      }),
    ));

  it('has beats that fill its bar', () =>
    fc.assert(
      fc.property(meters(), (m) => {
        expect(beatLengths(m).reduce((a, b) => a + b, 0)).toBe(barTicks(m));
        expect(barTicks(m)).toBe(m.beats * unitTicks(m));
      }),
    ));
});
