import type { Chord } from '../harmony/chord.ts';
import type { SectionId } from '../ids.ts';
import type { Timeline } from '../song/timeline.ts';
import { barTicks, type Meter } from '../time/meter.ts';

/** The section of a drill; no section of a song has this identity. */
export const DRILL_SECTION: SectionId = 'one-chord drill';

/**
 * The timeline of a one-chord drill: `bars` bars (at least 1, whole) of one meter, one section, and
 * one chord held from beginning to end. It takes the same road to sound as a song's timeline.
 */
export function drillTimeline(chord: Chord, meter: Meter, bars: number): Timeline {
  if (!Number.isInteger(bars) || bars < 1) throw new Error(`a drill has whole bars, not ${bars}`);
  const bar = barTicks(meter);
  const lengthTicks = bars * bar;
  return {
    bars: Array.from({ length: bars }, (_, i) => ({
      startTick: i * bar,
      meter,
      section: 0,
      barInSection: i,
    })),
    chords: [{ startTick: 0, endTick: lengthTicks, chord, section: 0, slot: 0 }],
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
