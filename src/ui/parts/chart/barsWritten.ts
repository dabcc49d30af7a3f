import type { Chart } from '../../../core/song/chart.ts';
import { sectionBars, sectionTicks } from '../../../core/song/form.ts';
import { slotsBetween } from '../../../core/song/slotsBetween.ts';
import type { Section } from '../../../core/song/song.ts';

/**
 * The section's chart with the bars of another written over its own from bar `bar` (0-based) on. As
 * many bars as are written are replaced, with their meters; beyond the end they are added.
 */
export function withBarsWritten(section: Section, bar: number, written: Chart): Chart {
  const bars = sectionBars(section);
  const { meter, name } = section;
  const count = sectionBars({ name, meter, ...written }).length;
  const end = sectionTicks(section);
  const from = bars[bar]?.startTick ?? end;
  const to = bars[bar + count]?.startTick ?? end;
  return {
    slots: [
      ...slotsBetween(section.slots, 0, from),
      ...written.slots,
      ...slotsBetween(section.slots, to, end),
    ],
    barMeters: [
      ...section.barMeters.filter((other) => other.bar < bar),
      ...written.barMeters.map((other) => ({ ...other, bar: other.bar + bar })),
      ...section.barMeters.filter((other) => other.bar >= bar + count),
    ],
  };
}
