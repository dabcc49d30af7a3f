import { type SectionBar, sectionBars, sectionTicks } from '../../core/song/form.ts';
import type { Section } from '../../core/song/song.ts';
import { barTicks, beatLengths, sameMeter } from '../../core/time/meter.ts';
import type { Ticks } from '../../core/time/ticks.ts';
import { fittingPx, type TypeSizes, textEms } from '../typeWidth.ts';
import { placedSlots } from './chordChanges.ts';

/** One felt beat of the chart. `slot` is the place of the chord that begins in it, in the section's slots. */
export type ChartCell = {
  readonly bar: number;
  readonly beat: number;
  readonly startTick: Ticks;
  readonly lengthTicks: Ticks;
  readonly slot?: number;
  /** The slot that sounds in the cell, the one that begins in it included. */
  readonly sounds: number;
  /** Whether the chord that sounds here ends with this beat. */
  readonly isLast: boolean;
};

/** A bar of the chart; ticks count from the section's start. It prints its meter where that differs from the bar before. */
export type ChartBar = SectionBar & {
  readonly bar: number;
  readonly lengthTicks: Ticks;
  readonly printsMeter: boolean;
  readonly cells: readonly ChartCell[];
};

export type ChartLine = readonly ChartBar[];

/** The bars of a section with one cell for each felt beat. */
export function chartBars(section: Section): ChartBar[] {
  const placed = placedSlots(section.slots);
  const bars = sectionBars(section);
  const end = sectionTicks(section);
  return bars.map((bar, index) => {
    let at = bar.startTick;
    const cells = beatLengths(bar.meter).map((lengthTicks, beat) => {
      const startTick = at;
      at += lengthTicks;
      const begun = placed.findLastIndex((slot) => slot.startTick < at);
      const begins = (placed[begun]?.startTick ?? 0) >= startTick;
      return {
        bar: index,
        beat,
        startTick,
        lengthTicks,
        sounds: begun,
        isLast: (placed[begun + 1]?.startTick ?? end) <= at,
        ...(begins ? { slot: begun } : {}),
      };
    });
    const before = bars[index - 1];
    return {
      ...bar,
      bar: index,
      lengthTicks: barTicks(bar.meter),
      printsMeter: !before || !sameMeter(before.meter, bar.meter),
      cells,
    };
  });
}

/** The bars in lines of at most `perLine`. */
export function chartLines(bars: readonly ChartBar[], perLine: number): ChartLine[] {
  const lines: ChartLine[] = [];
  for (let i = 0; i < bars.length; i += perLine) lines.push(bars.slice(i, i + perLine));
  return lines;
}

/** Length of a line in ticks. */
export function lineTicks(line: ChartLine): Ticks {
  return line.reduce((total, bar) => total + bar.lengthTicks, 0);
}

/** Length of the longest line, which fills the width; all lines have its scale, so that beats are alike everywhere. */
export function longestLineTicks(lines: readonly ChartLine[]): Ticks {
  return Math.max(1, ...lines.map(lineTicks));
}

/** The narrowest cell that a finger still finds, and the sizes at which chords are printed, in CSS pixels. */
export const CELL_PX = { narrowest: 44 } as const;
export const CHORD_PX: TypeSizes = { smallest: 20, usual: 37 };

/** Room between a chord and what follows it, in CSS pixels. */
const CHORD_GAP_PX = 9;

/** The size at which a chord's name fits a width, between the smallest and the usual. */
export function chordPx(name: string, widthPx: number): number {
  return fittingPx(name, widthPx - CHORD_GAP_PX, CHORD_PX);
}

/** Ticks from the beginning of a cell's chord to the next change, or to the end of the line. */
export function roomTicks(line: ChartLine, cell: ChartCell): Ticks {
  const later = line
    .flatMap((bar) => bar.cells)
    .find((other) => other.startTick > cell.startTick && other.slot !== undefined);
  const first = line[0]?.startTick ?? 0;
  return (later?.startTick ?? first + lineTicks(line)) - cell.startTick;
}

function fits(lines: readonly ChartLine[], names: readonly string[], widthPx: number): boolean {
  const pxPerTick = widthPx / longestLineTicks(lines);
  return lines.every((line) =>
    line
      .flatMap((bar) => bar.cells)
      .every((cell) => {
        if (cell.lengthTicks * pxPerTick < CELL_PX.narrowest) return false;
        if (cell.slot === undefined) return true;
        const room = roomTicks(line, cell) * pxPerTick;
        return textEms(names[cell.slot] ?? '') * CHORD_PX.smallest + CHORD_GAP_PX <= room;
      }),
  );
}

/**
 * Bars to a line: four as in a rehearsal chart, or two, or one where the cells would be too narrow
 * for a finger or for a chord's name at its smallest. `names` are the printed names by slot.
 */
export function barsPerLine(
  bars: readonly ChartBar[],
  names: readonly string[],
  widthPx: number,
): 4 | 2 | 1 {
  return ([4, 2] as const).find((n) => fits(chartLines(bars, n), names, widthPx)) ?? 1;
}

/**
 * The sizes at which the chords of a line are printed, by slot: the usual one, or smaller where a
 * name would run into the next; the chords of one bar have one size.
 */
export function chordSizes(
  line: ChartLine,
  names: readonly string[],
  pxPerTick: number,
): ReadonlyMap<number, number> {
  const sizes = new Map<number, number>();
  for (const { cells } of line) {
    const begun = cells.filter((cell) => cell.slot !== undefined);
    const fitting = begun.map((cell) =>
      chordPx(names[cell.sounds] ?? '', roomTicks(line, cell) * pxPerTick),
    );
    for (const cell of begun) sizes.set(cell.sounds, Math.min(...fitting));
  }
  return sizes;
}

/** Length of every slot in felt beats, by its cells. */
export function slotBeats(bars: readonly ChartBar[]): number[] {
  const beats: number[] = [];
  for (const { sounds } of bars.flatMap((bar) => bar.cells))
    beats[sounds] = (beats[sounds] ?? 0) + 1;
  return beats;
}

/**
 * Where a tick (from the section's start, fractions too) lies on the chart: its line, and how far
 * across the full width, 0 to 1. Undefined outside the section.
 */
export function chartPlace(
  lines: readonly ChartLine[],
  tick: number,
): { readonly line: number; readonly across: number } | undefined {
  const line = lines.findIndex((each) => {
    const start = each[0]?.startTick ?? 0;
    return tick >= start && tick < start + lineTicks(each);
  });
  const start = lines[line]?.[0]?.startTick;
  return start === undefined
    ? undefined
    : { line, across: (tick - start) / longestLineTicks(lines) };
}

/** The cell of a tick; undefined outside the section. */
export function cellAt(bars: readonly ChartBar[], tick: number): ChartCell | undefined {
  return bars
    .flatMap((bar) => bar.cells)
    .find((cell) => tick >= cell.startTick && tick < cell.startTick + cell.lengthTicks);
}
