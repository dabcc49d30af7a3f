import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { BASS_TONES } from '../../../../src/core/rhythm/tones.ts';
import { bassSpans, voiceRows, voiceSpan } from '../../../../src/ui/parts/grid/toneHeights.ts';
import { pattern } from '../../../support/patterns.ts';

function rowsFor(right: string): number {
  return voiceRows(pattern('4/4', { right }).right);
}

it('has a row for every single voice that is played, and three at least', () => {
  expect([rowsFor('C...'), rowsFor('12..'), rowsFor('1234')]).toEqual([3, 3, 4]);
});

it('lets single voices climb and a chord span the whole zone', () => {
  expect(voiceSpan('voice-1', 4)).toEqual({ from: 0, to: 0.25 });
  expect(voiceSpan('voice-4', 4)).toEqual({ from: 0.75, to: 1 });
  expect(voiceSpan('all', 4)).toEqual({ from: 0, to: 1 });
});

it('makes bottom, middle and top together the whole zone, and upper all but the bottom', () => {
  const [bottom, middle, top, upper] = (['bottom', 'middle', 'top', 'upper'] as const).map((tone) =>
    voiceSpan(tone, 3),
  );
  expect([bottom!.from, middle!.from, top!.from]).toEqual([0, bottom!.to, middle!.to]);
  expect(upper).toEqual({ from: bottom!.to, to: 1 });
});

it('draws bass tones in the order of their pitch', () => {
  const rising = [
    'fifth-below',
    'root',
    'third',
    'fifth',
    'sixth',
    'seventh',
    'octave',
    'tenth',
  ] as const;
  const heights = rising.map((tone) => bassSpans([tone], 0.2)[0]!.from);
  expect(heights).toEqual(heights.toSorted((a, b) => a - b));
  expect(new Set(heights).size).toBe(rising.length);
});

it('keeps bass tones that sound together apart and inside the zone', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.constantFrom(...BASS_TONES), { minLength: 1 }),
      fc.double({ min: 0.05, max: 0.5, noNaN: true }),
      (tones, thickness) => {
        const spans = bassSpans(tones, thickness).toSorted((a, b) => a.from - b.from);
        expect(spans[0]!.from).toBeGreaterThanOrEqual(-1e-9);
        expect(spans.at(-1)!.to).toBeLessThanOrEqual(1 + 1e-9);
        for (const [i, { from }] of spans.slice(1).entries())
          expect(from).toBeGreaterThanOrEqual(spans[i]!.to - 1e-9);
      },
    ),
  );
});
