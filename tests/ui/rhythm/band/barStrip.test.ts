import { expect, it } from 'vitest';
import type { Band } from '../../../../src/core/rhythm/band.ts';
import { barAtShare, rangeBetween, stripBars } from '../../../../src/ui/rhythm/band/barStrip.ts';
import { meter } from '../../../support/music.ts';

function band(notesInBars: readonly number[]): Band {
  const notes = notesInBars.flatMap((count, bar) =>
    Array.from({ length: count }, (_, i) => ({
      startTick: bar * 1920 + i * 100,
      durationTicks: 50,
      keyNumber: 40,
      velocity: 80,
    })),
  );
  return {
    bars: notesInBars.map((_, bar) => ({ startTick: bar * 1920, meter: meter('4/4') })),
    tempoMap: [],
    lengthTicks: notesInBars.length * 1920,
    tracks: [{ name: '', channel: 0, program: 0, isDrums: false, notes, guess: 'bass' }],
  };
}

it('shows how full every bar is, and which of the chosen agree', () => {
  const bars = stripBars(band([4, 0, 2, 8]), { firstBar: 2, lastBar: 3 }, [0.9, 0.2], 0.7);
  expect(bars).toEqual([
    { fullness: 0.5, state: 'outside' },
    { fullness: 0, state: 'outside' },
    { fullness: 0.25, state: 'agrees' },
    { fullness: 1, state: 'differs' },
  ]);
});

it('finds the bar under the pointer, also beyond the ends of the strip', () => {
  expect([-0.2, 0, 0.49, 0.5, 1, 1.4].map((share) => barAtShare(8, share))).toEqual([
    0, 0, 3, 4, 7, 7,
  ]);
});

it('makes a range of a drag in either direction', () => {
  expect(rangeBetween(7, 3)).toEqual({ firstBar: 3, lastBar: 7 });
});
