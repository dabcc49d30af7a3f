import type { Chord } from '../harmony/chord.ts';
import type { SectionId } from '../ids.ts';
import type { ChordSpan, Timeline } from '../song/timeline.ts';
import { barTicks, type Meter } from '../time/meter.ts';

/** The section of a drill on chords by themselves; no section of a song has this identity. */
export const DRILL_SECTION: SectionId = 'one-chord drill';

/**
 * The timeline of a one-chord drill: `bars` bars (at least 1, whole) of one meter, one section, and
 * one chord held from beginning to end. It takes the same road to sound as a song's timeline.
 */
export function drillTimeline(chord: Chord, meter: Meter, bars: number): Timeline {
  return turnsTimeline([{ chord }], meter, bars);
}

/** A chord of a drill; with `fixedKeys` the hands that are to hold it, as in the song. */
export type DrillChord = Pick<ChordSpan, 'chord' | 'fixedKeys'>;

/**
 * The timeline of a drill on chords by themselves, held in turn (at least one), each for `barsEach`
 * bars (at least 1, whole) of one meter: one section, whose chords are its slots.
 */
export function turnsTimeline(
  chords: readonly DrillChord[],
  meter: Meter,
  barsEach: number,
): Timeline {
  if (!Number.isInteger(barsEach) || barsEach < 1)
    throw new Error(`a drill has whole bars, not ${barsEach}`);
  if (chords.length === 0) throw new Error('a drill without a chord');
  const bar = barTicks(meter);
  const bars = chords.length * barsEach;
  const lengthTicks = bars * bar;
  return {
    bars: Array.from({ length: bars }, (_, i) => ({
      startTick: i * bar,
      meter,
      section: 0,
      barInSection: i,
    })),
    chords: chords.map((chord, slot) => ({
      startTick: slot * barsEach * bar,
      endTick: (slot + 1) * barsEach * bar,
      section: 0,
      slot,
      ...chord,
    })),
    sections: [
      {
        startTick: 0,
        endTick: lengthTicks,
        sectionId: DRILL_SECTION,
        name: 'Drill',
        repeat: 0,
        bars,
      },
    ],
    lengthTicks,
  };
}
