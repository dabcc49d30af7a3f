import type { Bpm } from '../time/tempoMap.ts';

/** The marks of mechanical metronomes, in beats a minute (docs/sources.md#metronome-marks). */
export const METRONOME_MARKS: readonly Bpm[] = [
  40, 42, 44, 46, 48, 50, 52, 54, 56, 58, 60, 63, 66, 69, 72, 76, 80, 84, 88, 92, 96, 100, 104, 108,
  112, 116, 120, 126, 132, 138, 144, 152, 160, 168, 176, 184, 192, 200, 208,
];

/** Where the marks end they go on as they last went. */
const BEYOND: Bpm = 8;

/** The next mark above a tempo; below the first mark that, above the last one steps of 8. */
export function markAbove(bpm: Bpm): Bpm {
  return METRONOME_MARKS.find((mark) => mark > bpm) ?? bpm + BEYOND;
}
