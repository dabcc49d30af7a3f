import { type SectionBar, sectionBars, sectionTicks } from '../../../core/song/form.ts';
import type { Section } from '../../../core/song/song.ts';
import { barTicks, beatLengths, sameMeter } from '../../../core/time/meter.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { fittingPx, type TypeSizes, textEms } from '../../kit/typeWidth.ts';
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
export type LaidChartBar = SectionBar & {
  readonly bar: number;
  readonly lengthTicks: Ticks;
  readonly printsMeter: boolean;
  readonly cells: readonly ChartCell[];
};

/** A line of the chart; `spanTicks` is what its full width stands for, more than its bars where it is not full. */
export type ChartLine = { readonly bars: readonly LaidChartBar[]; readonly spanTicks: Ticks };

/** The bars of a section with one cell for each felt beat. */
export function chartBars(section: Section): LaidChartBar[] {
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

/** The narrowest cell that a finger still finds, and the sizes at which chords are printed, in CSS pixels. */
export const CELL_PX = { narrowest: 44 } as const;
export const CHORD_PX: TypeSizes = { smallest: 20, usual: 37 };

/** Room between a chord and what follows it, in CSS pixels. */
const CHORD_GAP_PX = 9;

/** The size at which a chord's name fits a width, between the smallest and the usual. */
export function chordPx(name: string, widthPx: number): number {
  return fittingPx(name, widthPx - CHORD_GAP_PX, CHORD_PX);
}

function ticksOf(bars: readonly LaidChartBar[]): Ticks {
  return bars.reduce((total, bar) => total + bar.lengthTicks, 0);
}

/** The cells of a line in order. */
export function lineCells({ bars }: Pick<ChartLine, 'bars'>): ChartCell[] {
  return bars.flatMap((bar) => bar.cells);
}

/** Ticks from the beginning of a cell's chord to the next change, or to the end of the line's bars. */
export function roomTicks(line: Pick<ChartLine, 'bars'>, cell: ChartCell): Ticks {
  const later = lineCells(line).find(
    (other) => other.startTick > cell.startTick && other.slot !== undefined,
  );
  const first = line.bars[0]?.startTick ?? 0;
  return (later?.startTick ?? first + ticksOf(line.bars)) - cell.startTick;
}

function inGroups(bars: readonly LaidChartBar[], size: number): (readonly LaidChartBar[])[] {
  const groups: (readonly LaidChartBar[])[] = [];
  for (let i = 0; i < bars.length; i += size) groups.push(bars.slice(i, i + size));
  return groups;
}

/** Whether a finger finds every cell of bars that stand in lines of `size` with one scale. */
function areTouchable(bars: readonly LaidChartBar[], size: number, widthPx: number): boolean {
  const longest = Math.max(...inGroups(bars, size).map(ticksOf));
  const shortest = Math.min(...lineCells({ bars }).map((cell) => cell.lengthTicks));
  return (shortest * widthPx) / longest >= CELL_PX.narrowest;
}

/** Whether the names of a line's chords stand beside each other without touching, at their smallest. */
function areReadable(line: ChartLine, names: readonly string[], widthPx: number): boolean {
  return lineCells(line).every((cell) => {
    const room = (roomTicks(line, cell) * widthPx) / line.spanTicks;
    const name = cell.slot === undefined ? '' : (names[cell.slot] ?? '');
    return name === '' || textEms(name) * CHORD_PX.smallest + CHORD_GAP_PX <= room;
  });
}

/** A line as it is, or as lines of half the bars and twice the width where its chords stand too close. */
function splitWhereCrowded(
  line: ChartLine,
  size: number,
  names: readonly string[],
  widthPx: number,
): ChartLine[] {
  if (size === 1 || areReadable(line, names, widthPx)) return [line];
  const half = size / 2;
  return inGroups(line.bars, half).flatMap((bars) => {
    const spanTicks = Math.max(line.spanTicks / 2, ticksOf(bars));
    return splitWhereCrowded({ bars, spanTicks }, half, names, widthPx);
  });
}

/**
 * The bars in lines: four bars to a line as in a rehearsal chart, or two, or one where cells would be
 * too narrow for a finger. Lines have one scale, so that beats stand below each other; only a line
 * whose chords would touch is split and has wider bars. `names` are the printed names by slot.
 */
export function chartLines(
  bars: readonly LaidChartBar[],
  names: readonly string[],
  widthPx: number,
): ChartLine[] {
  if (bars.length === 0) return [];
  const size = ([4, 2] as const).find((n) => areTouchable(bars, n, widthPx)) ?? 1;
  const groups = inGroups(bars, size);
  const spanTicks = Math.max(...groups.map(ticksOf));
  return groups.flatMap((group) =>
    splitWhereCrowded({ bars: group, spanTicks }, size, names, widthPx),
  );
}

/**
 * The sizes at which the chords of a line are printed, by slot: the usual one, or smaller where a
 * name would run into the next; the chords of one bar have one size.
 */
export function chordSizes(
  line: ChartLine,
  names: readonly string[],
  widthPx: number,
): ReadonlyMap<number, number> {
  const sizes = new Map<number, number>();
  for (const { cells } of line.bars) {
    const begun = cells.filter((cell) => cell.slot !== undefined);
    const fitting = begun.map((cell) =>
      chordPx(names[cell.sounds] ?? '', (roomTicks(line, cell) * widthPx) / line.spanTicks),
    );
    for (const cell of begun) sizes.set(cell.sounds, Math.min(...fitting));
  }
  return sizes;
}

/** Length of every slot in felt beats, by its cells. */
export function slotBeats(bars: readonly LaidChartBar[]): number[] {
  const beats: number[] = [];
  for (const { sounds } of lineCells({ bars })) beats[sounds] = (beats[sounds] ?? 0) + 1;
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
  for (const [line, { bars, spanTicks }] of lines.entries()) {
    const start = bars[0]?.startTick ?? 0;
    if (tick >= start && tick < start + ticksOf(bars))
      return { line, across: (tick - start) / spanTicks };
  }
  return undefined;
}

/** The cell of a tick; undefined outside the section. */
export function cellAt(bars: readonly LaidChartBar[], tick: number): ChartCell | undefined {
  return lineCells({ bars }).find(
    (cell) => tick >= cell.startTick && tick < cell.startTick + cell.lengthTicks,
  );
}
