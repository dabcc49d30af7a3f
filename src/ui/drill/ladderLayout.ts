import type { DrillRung } from '../../core/practice/drillRungs.ts';

/** One rung as drawn: its tempo and level, its height in per cent from the foot, how it stands to the rung in use. */
export type DrawnRung = DrillRung & {
  readonly index: number;
  readonly heightPercent: number;
  readonly standing: 'climbed' | 'here' | 'ahead';
};

/**
 * The rungs of a ladder that are drawn when at most `most` fit: all of them, or else the first, the
 * last and those around the rung in use. `here` counts from 0; heights spread evenly from 0 to 100.
 */
export function drawnRungs(rungs: readonly DrillRung[], here: number, most: number): DrawnRung[] {
  const shown = shownIndexes(rungs.length, here, most);
  return shown.map((index, place) => ({
    ...rungs[index]!,
    index,
    heightPercent: shown.length === 1 ? 50 : (100 * place) / (shown.length - 1),
    standing: standingOf(index, here),
  }));
}

function standingOf(index: number, here: number): DrawnRung['standing'] {
  if (index === here) return 'here';
  return index < here ? 'climbed' : 'ahead';
}

function shownIndexes(count: number, here: number, most: number): number[] {
  if (count <= most) return Array.from({ length: count }, (_, i) => i);
  const inner = most - 2;
  const first = Math.min(Math.max(here - Math.floor(inner / 2), 1), count - 1 - inner);
  return [0, ...Array.from({ length: inner }, (_, i) => first + i), count - 1];
}
