import { expect, it } from 'vitest';
import type { BandNote } from '../../../src/core/rhythm/band.ts';
import { steadiestRange } from '../../../src/core/rhythm/bandRange.ts';
import { bandNote, bandOf, bandTrack, times } from '../../support/bands.ts';
import { seededRandom } from '../../support/random.ts';

const BAR = 1920;

/** Kick, snare and hats in eighths for each bar that is asked for. */
function drums(bars: readonly number[]): BandNote[] {
  return bars.flatMap((bar) => {
    const at = bar * BAR;
    const hats = Array.from({ length: 8 }, (_, i) => bandNote(42, at + i * 240));
    return [bandNote(36, at), ...hats, bandNote(38, at + 480), bandNote(38, at + 1440)];
  });
}

function sorted(notes: readonly BandNote[]): BandNote[] {
  return notes.toSorted((a, b) => a.startTick - b.startTick);
}

/** A bar of strokes that come anywhere, another one each time. */
function wild(bar: number): BandNote[] {
  const random = seededRandom(bar);
  return Array.from({ length: 10 }, () =>
    bandNote([36, 38, 42][random.index(3)]!, bar * BAR + random.index(16) * 120),
  );
}

function barNumbers(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

it('finds the eight steady bars among wild ones', () => {
  const notes = [
    ...barNumbers(0, 5).flatMap(wild),
    ...drums(barNumbers(6, 13)),
    ...barNumbers(14, 19).flatMap(wild),
  ];
  const band = bandOf([bandTrack(sorted(notes), 'drums')], times(20));
  expect(steadiestRange(band, ['drums'])).toEqual({ firstBar: 6, lastBar: 13 });
});

it('takes sixteen bars where all are alike, the first of them', () => {
  const band = bandOf([bandTrack(sorted(drums(barNumbers(0, 29))), 'drums')], times(30));
  expect(steadiestRange(band, ['drums'])).toEqual({ firstBar: 0, lastBar: 15 });
});

it('prefers bars in which the whole band plays', () => {
  const bass = barNumbers(16, 31).flatMap((bar) =>
    [0, 480, 960, 1440].map((at) => bandNote(36, bar * BAR + at)),
  );
  const kit = bandTrack(sorted(drums(barNumbers(0, 31))), 'drums');
  const band = bandOf([kit, bandTrack(bass, 'bass')], times(32));
  expect(steadiestRange(band, ['drums', 'bass'])).toEqual({ firstBar: 16, lastBar: 31 });
});

it('stays within one meter', () => {
  const kit = bandTrack(sorted(drums(barNumbers(0, 9))), 'drums');
  const band = bandOf([kit], [...times(9), '3/4', ...times(3)]);
  expect(steadiestRange(band, ['drums'])).toEqual({ firstBar: 0, lastBar: 7 });
});

it('takes short music whole', () => {
  const band = bandOf([bandTrack(sorted(drums([0, 1, 2])), 'drums')], times(3));
  expect(steadiestRange(band, ['drums'])).toEqual({ firstBar: 0, lastBar: 2 });
});
