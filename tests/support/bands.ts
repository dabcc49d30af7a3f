import type { Band, BandNote, BandTrack, TrackRole } from '../../src/core/rhythm/band.ts';
import { barTicks } from '../../src/core/time/meter.ts';
import { steadyTempo } from '../../src/core/time/tempoMap.ts';
import { meter } from './music.ts';

/** One note of the band; an eighth and velocity 80 where not said. */
export function bandNote(
  keyNumber: number,
  startTick: number,
  durationTicks = 240,
  velocity = 80,
): BandNote {
  return { keyNumber, startTick, durationTicks, velocity };
}

/** A track as it is guessed when not said: a bass line on channel 1. */
export function bandTrack(
  notes: readonly BandNote[],
  guess: TrackRole,
  parts: Partial<BandTrack> = {},
): BandTrack {
  const isDrums = guess === 'drums';
  const channel = isDrums ? 9 : 0;
  return { name: guess, channel, program: 0, isDrums, notes, guess, ...parts };
}

/** A band at 120 in bars of these meters, end to end. */
export function bandOf(tracks: readonly BandTrack[], meters: readonly string[]): Band {
  let startTick = 0;
  const bars = meters.map((text) => {
    const bar = { startTick, meter: meter(text) };
    startTick += barTicks(bar.meter);
    return bar;
  });
  return { bars, tempoMap: steadyTempo(120), tracks, lengthTicks: startTick };
}

/** The same text for so many bars. */
export function times(count: number, meterText = '4/4'): string[] {
  return Array.from({ length: count }, () => meterText);
}
