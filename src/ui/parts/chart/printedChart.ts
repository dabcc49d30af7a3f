import type { Section } from '../../../core/song/song.ts';
import {
  CHORD_PX,
  type ChartCell,
  type ChartLine,
  chartBars,
  chartLines,
  chordSizes,
  type LaidChartBar,
  slotBeats,
} from './chartLayout.ts';
import { twoFiveMarks } from './twoFiveMarks.ts';

/** Names of a section's chords by slot: as printed large, as printed below, and as they would be typed. */
export type SlotNames = {
  readonly names: readonly string[];
  readonly below: readonly string[];
  readonly typed: readonly string[];
};

/** A chord as a cell prints it: its name at a size, its length in felt beats, its other name below. */
export type PrintedChord = {
  readonly name: string;
  readonly below: string;
  readonly beats: number;
  readonly sizePx: number;
};

/** What of a ii–V bracket is drawn under a cell. */
export type CellBracket = { readonly begins: boolean; readonly ends: boolean };

/** The chart of a section laid out in a width. */
export type PrintedChart = {
  readonly bars: readonly LaidChartBar[];
  readonly lines: readonly ChartLine[];
  /** The chord that begins in a cell of a line; undefined where one goes on. */
  readonly chordOf: (line: number, cell: ChartCell) => PrintedChord | undefined;
  /** The ii–V bracket under a cell; undefined where none is. */
  readonly bracketOf: (cell: ChartCell) => CellBracket | undefined;
};

/** Lays out a section's chart in lines of as many bars as fit, with the size of every chord. */
export function printedChart(section: Section, names: SlotNames, widthPx: number): PrintedChart {
  const bars = chartBars(section);
  const lines = chartLines(bars, names.names, widthPx);
  const beats = slotBeats(bars);
  const marks = twoFiveMarks(section.slots);
  const sizes = lines.map((line) => chordSizes(line, names.names, widthPx));
  return {
    bars,
    lines,
    chordOf: (line, { slot }) =>
      slot === undefined
        ? undefined
        : {
            name: names.names[slot] ?? '',
            below: names.below[slot] ?? '',
            beats: beats[slot] ?? 1,
            sizePx: sizes[line]?.get(slot) ?? CHORD_PX.usual,
          },
    bracketOf: ({ slot, sounds, isLast }) => {
      const mark = marks[sounds];
      return (
        mark && { begins: mark === 'begins' && slot !== undefined, ends: mark === 'ends' && isLast }
      );
    },
  };
}
