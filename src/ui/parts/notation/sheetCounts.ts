import { countSyllables } from '../../../core/rhythm/counts.ts';
import { DIVISIONS, type Division, patternSteps } from '../../../core/rhythm/pattern.ts';
import type { SheetBar } from '../../../core/rhythm/sheet.ts';
import { beatLengths, beatStarts } from '../../../core/time/meter.ts';
import type { Ticks } from '../../../core/time/ticks.ts';

/** What is counted at a tick of the timeline; `silent` where no hand strikes. */
export type SheetCount = {
  readonly tick: Ticks;
  readonly text: string;
  readonly silent: boolean;
};

/** Ticks of the timeline at which a hand strikes in a bar, ascending; notes that are tied from before are not struck. */
function struckTicks(bar: SheetBar): Ticks[] {
  const events = [...bar.staves.right, ...bar.staves.left].flat();
  const struck = events.filter(({ notes }) => notes.some((note) => !note.tiedFromBefore));
  return [...new Set(struck.map(({ startTick }) => startTick))].toSorted((a, b) => a - b);
}

/**
 * The spoken count of a bar: the number of every felt beat, and between them the syllables at which
 * a hand strikes. Each beat is counted in the coarsest division that has all its strikes.
 */
export function sheetCounts(bar: SheetBar): SheetCount[] {
  const struck = struckTicks(bar).map((tick) => tick - bar.startTick);
  const lengths = beatLengths(bar.meter);
  const starts = beatStarts(bar.meter);
  const divisions = starts.map((start, i) =>
    divisionWith(
      struck.map((tick) => tick - start).filter((tick) => tick > 0 && tick < lengths[i]!),
      lengths[i]!,
    ),
  );
  const grid = { meter: bar.meter, bars: 1, divisions };
  const syllables = countSyllables(grid);
  return patternSteps(grid).flatMap(({ at, index }, i) => {
    const silent = !struck.includes(at);
    return silent && index > 0 ? [] : [{ tick: bar.startTick + at, text: syllables[i]!, silent }];
  });
}

function divisionWith(offsets: readonly Ticks[], length: Ticks): Division {
  return DIVISIONS.find((d) => offsets.every((offset) => (offset * d) % length === 0)) ?? 8;
}
