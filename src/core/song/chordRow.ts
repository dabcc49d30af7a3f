import type { Chord } from '../harmony/chord.ts';
import { barTicks, beatStarts, type Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { Chart } from './chart.ts';
import { type SectionBar, sectionBars, sectionTicks } from './form.ts';
import { slotsBetween } from './slotsBetween.ts';
import type { ChordSlot, Section } from './song.ts';

/** How long each of a row of chords lasts: a bar, or to the middle of a bar and from there to its end. */
export const PACES = ['bar', 'half-bar'] as const;

export type Pace = (typeof PACES)[number];

/** Where chords of a pace change in a bar, from its start. A bar of three beats is halved before the third. */
function turnsIn(meter: Meter, pace: Pace): Ticks[] {
  const beats = beatStarts(meter);
  const middle = beats[Math.ceil(beats.length / 2)];
  return pace === 'bar' || middle === undefined ? [0] : [0, middle];
}

function turnsOf(bars: readonly SectionBar[], pace: Pace): Ticks[] {
  return bars.flatMap((bar) => turnsIn(bar.meter, pace).map((turn) => bar.startTick + turn));
}

/** Bars of one meter, end to end from a tick. */
function barsFrom(startTick: Ticks, meter: Meter, count: number): SectionBar[] {
  return Array.from({ length: count }, (_, i) => ({
    startTick: startTick + i * barTicks(meter),
    meter,
  }));
}

/** Chords that begin at `places` (ascending) and last until the next, the last one until the end of its bar. */
function chordsAt(
  places: readonly Ticks[],
  chords: readonly Chord[],
  bars: readonly SectionBar[],
): { readonly slots: readonly ChordSlot[]; readonly endTick: Ticks } {
  const last = bars.findLast((bar) => bar.startTick <= places.at(-1)!)!;
  const endTick = last.startTick + barTicks(last.meter);
  const slots = chords.map((chord, i) => ({
    chord,
    durationTicks: (places[i + 1] ?? endTick) - places[i]!,
  }));
  return { slots, endTick };
}

/** A row of chords (at least one) at a pace, from a bar line on; the last one fills its bar. */
export function chordRow(chords: readonly Chord[], meter: Meter, pace: Pace): readonly ChordSlot[] {
  const bars = barsFrom(0, meter, chords.length);
  return chordsAt(turnsOf(bars, pace).slice(0, chords.length), chords, bars).slots;
}

/**
 * The section's chart with a row of chords (at least one) written over it: the first from `tick` on,
 * a beat of the section, each of the others where the pace next lets one change, the last one until
 * the end of its bar. What follows stays where it is; bars that are wanting at the end are added.
 */
export function withChordRow(
  section: Section,
  tick: Ticks,
  chords: readonly Chord[],
  pace: Pace,
): Chart {
  const { slots, barMeters, meter } = section;
  const length = sectionTicks(section);
  const bars = [...sectionBars(section), ...barsFrom(length, meter, chords.length)];
  const turns = turnsOf(bars, pace).filter((turn) => turn > tick);
  const row = chordsAt([tick, ...turns].slice(0, chords.length), chords, bars);
  return {
    slots: [
      ...slotsBetween(slots, 0, tick),
      ...row.slots,
      ...slotsBetween(slots, row.endTick, length),
    ],
    barMeters,
  };
}

/** Where in the section the next chord of a pace can change after `tick`; `tick` itself where there is no such place. */
export function nextTurn(section: Section, tick: Ticks, pace: Pace): Ticks {
  return turnsOf(sectionBars(section), pace).find((turn) => turn > tick) ?? tick;
}
