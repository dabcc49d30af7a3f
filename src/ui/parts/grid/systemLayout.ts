import { type Pattern, patternSteps, type Step } from '../../../core/rhythm/pattern.ts';
import { barTicks } from '../../../core/time/meter.ts';
import type { Ticks } from '../../../core/time/ticks.ts';

/** All measures of the grid are CSS pixels. */
export type Pixels = number;

/** A step where it stands on the page; `column` counts over the whole pattern from 0. */
export type PlacedStep = Step & {
  readonly column: number;
  readonly x: Pixels;
  readonly width: Pixels;
};

/** Bars that stand side by side, as a system of a score. `left` and `right` are the x of its first and last bar line. */
export type System = {
  readonly firstBar: number;
  readonly bars: number;
  readonly fromTick: Ticks;
  readonly toTick: Ticks;
  readonly left: Pixels;
  readonly right: Pixels;
  readonly steps: readonly PlacedStep[];
};

/** What the layout reads of a pattern. */
export type Grid = Pick<Pattern, 'meter' | 'bars' | 'divisions'>;

/** Room beside the bars: the names of the rows, and what leads over the last bar line. */
export const MARGINS = { left: 100, right: 34 } as const;

/** Least width of a step whose count can be read from the stand. */
const LEGIBLE: Pixels = 34;

/** Most steps side by side: on a tablet one bar of sixteenths, on a wide page two. */
function mostSteps(innerWidth: Pixels): number {
  return innerWidth < 1100 ? 16 : 32;
}

function fits(steps: readonly Step[], systemTicks: Ticks, innerWidth: Pixels): boolean {
  const narrowest = Math.min(...steps.map((step) => step.length));
  return steps.length <= mostSteps(innerWidth) && (narrowest / systemTicks) * innerWidth >= LEGIBLE;
}

/**
 * How many bars stand side by side on `width` pixels: as many of 4, 2 or 1 as divide the pattern and
 * leave no system with too many steps, or with steps too narrow, to be read. One bar is never broken.
 */
export function barsPerSystem(grid: Grid, width: Pixels): number {
  const bar = barTicks(grid.meter);
  const steps = patternSteps(grid);
  const innerWidth = width - MARGINS.left - MARGINS.right;
  const isLegible = (bars: number) =>
    Array.from({ length: grid.bars / bars }, (_, i) =>
      steps.filter(({ at }) => at >= i * bars * bar && at < (i + 1) * bars * bar),
    ).every((inSystem) => fits(inSystem, bars * bar, innerWidth));
  return [4, 2].find((bars) => grid.bars % bars === 0 && isLegible(bars)) ?? 1;
}

/** The x of a tick in a system; ticks outside it lie beyond its bar lines. */
export function tickX(system: Omit<System, 'steps'>, tick: Ticks): Pixels {
  const share = (tick - system.fromTick) / (system.toTick - system.fromTick);
  return system.left + share * (system.right - system.left);
}

/** The tick at an x of a system, not rounded; the inverse of `tickX`. */
export function tickAtX(system: Omit<System, 'steps'>, x: Pixels): number {
  const share = (x - system.left) / (system.right - system.left);
  return system.fromTick + share * (system.toTick - system.fromTick);
}

/** The systems of a pattern on `width` pixels, from the top down; widths are proportional to time. */
export function systemsOf(grid: Grid, width: Pixels): System[] {
  const bars = barsPerSystem(grid, width);
  const ticks = bars * barTicks(grid.meter);
  const steps = patternSteps(grid);
  return Array.from({ length: Math.ceil(grid.bars / bars) }, (_, i) => {
    const frame = {
      firstBar: i * bars,
      bars,
      fromTick: i * ticks,
      toTick: (i + 1) * ticks,
      left: MARGINS.left,
      right: Math.max(width - MARGINS.right, MARGINS.left + 1),
    };
    const placed = steps.map((step, column): PlacedStep => {
      const x = tickX(frame, step.at);
      return { ...step, column, x, width: tickX(frame, step.at + step.length) - x };
    });
    return {
      ...frame,
      steps: placed.filter(({ at }) => at >= frame.fromTick && at < frame.toTick),
    };
  });
}

/** The system in which a tick lies; undefined outside the pattern. */
export function systemAt(systems: readonly System[], tick: number): System | undefined {
  return systems.find(({ fromTick, toTick }) => tick >= fromTick && tick < toTick);
}
