import type { Chart } from '../../core/song/chart.ts';
import { type SectionBar, sectionBars } from '../../core/song/form.ts';
import type { ChordSlot, Section } from '../../core/song/song.ts';
import { barTicks, beatStarts, type Meter, sameMeter } from '../../core/time/meter.ts';
import type { Ticks } from '../../core/time/ticks.ts';

/** A chord change of a bar: on which felt beat (0-based) which slot begins. */
type ChangeOnBeat = { readonly beat: number; readonly slot: ChordSlot };

type Written = Pick<Section, 'name' | 'meter' | 'barMeters' | 'slots'>;

type Bar = { readonly meter: Meter; readonly changes: readonly ChangeOnBeat[] };

function barsOf(section: Written): Bar[] {
  const bars = sectionBars(section).map((bar) => ({ ...bar, changes: [] as ChangeOnBeat[] }));
  let tick = 0;
  for (const slot of section.slots) {
    const bar = bars.findLast(({ startTick }) => startTick <= tick);
    bar?.changes.push({ beat: beatAt(bar, tick), slot });
    tick += slot.durationTicks;
  }
  return bars;
}

function beatAt(bar: SectionBar, tick: Ticks): number {
  return beatStarts(bar.meter).findLastIndex((start) => bar.startTick + start <= tick);
}

/** The changes of a bar of `from` beats on the nearest beats of one of `to` beats, in order and each on its own. */
function spread(changes: readonly ChangeOnBeat[], from: number, to: number): ChangeOnBeat[] {
  let free = 0;
  return changes.map(({ beat, slot }, i) => {
    const last = to - (changes.length - i);
    const placed = Math.min(Math.max(Math.round((beat * to) / from), free), last);
    free = placed + 1;
    return { beat: placed, slot };
  });
}

/** The bars that one bar becomes in another meter: more than one where its changes outnumber the beats. */
function refitted(bar: Bar, meter: Meter): Bar[] {
  const from = beatStarts(bar.meter).length;
  const to = beatStarts(meter).length;
  if (bar.changes.length <= to) return [{ meter, changes: spread(bar.changes, from, to) }];
  return Array.from({ length: Math.ceil(bar.changes.length / to) }, (_, n) => ({
    meter,
    changes: bar.changes.slice(n * to, (n + 1) * to).map(({ slot }, beat) => ({ beat, slot })),
  }));
}

function chartOf(bars: readonly Bar[], sectionMeter: Meter): Chart {
  let end = 0;
  const starts = bars.flatMap(({ meter, changes }) => {
    const barStart = end;
    end += barTicks(meter);
    const beats = beatStarts(meter);
    return changes.map(({ beat, slot }) => ({ at: barStart + (beats[beat] ?? 0), slot }));
  });
  return {
    slots: starts.map(({ at, slot }, i) => ({
      ...slot,
      durationTicks: (starts[i + 1]?.at ?? end) - at,
    })),
    barMeters: bars
      .map(({ meter }, bar) => ({ bar, meter }))
      .filter(({ meter }) => !sameMeter(meter, sectionMeter)),
  };
}

/**
 * The section's chart in another meter. Every chord is kept: a change goes to the beat that lies as
 * far into the bar as before; a bar with more changes than the new meter has beats goes on in
 * further bars. Bars that have a meter of their own keep it.
 */
export function refitChart(section: Written, meter: Meter): Chart {
  return chartOf(refittedBars(section, meter).flat(), meter);
}

/** How many bars each bar of a section becomes in another meter: see `refitChart`. */
export function refittedBarCounts(section: Written, meter: Meter): number[] {
  return refittedBars(section, meter).map((bars) => bars.length);
}

function refittedBars(section: Written, meter: Meter): Bar[][] {
  return barsOf(section).map((bar) =>
    sameMeter(bar.meter, section.meter) ? refitted(bar, meter) : [bar],
  );
}
