import { chordTones } from '../../src/core/harmony/chord.ts';
import { type Key, scaleOf } from '../../src/core/harmony/key.ts';
import { chromaOf } from '../../src/core/harmony/pitch.ts';
import { chordAt, type Timeline } from '../../src/core/song/timeline.ts';
import { beatStarts } from '../../src/core/time/meter.ts';
import type { Ticks } from '../../src/core/time/ticks.ts';
import type { Random } from './random.ts';

export type LineNote = {
  readonly startTick: Ticks;
  readonly endTick: Ticks;
  readonly keyNumber: number;
};

const RANGE = { lowest: 57, highest: 76 };

/**
 * A line as a singer may sing it over the chords: about two notes to three beats, mostly chord notes, others
 * from the scale, in small steps, with rests.
 */
export function sungLine(timeline: Timeline, key: Key, random: Random): LineNote[] {
  const scale = scaleOf(key).map(chromaOf);
  let last = 62 + random.index(8);
  return timeline.bars.flatMap(({ startTick, meter }) =>
    beatStarts(meter).flatMap((beat) => {
      const at = startTick + beat;
      if (random.uniform() < 0.35) return [];
      const chord = chordAt(timeline, at)?.chord;
      const own =
        !chord || chord === 'no-chord'
          ? scale
          : chordTones(chord).map(({ pitchClass }) => chromaOf(pitchClass));
      const classes = random.uniform() < 0.65 ? own : scale;
      const near = Array.from(
        { length: RANGE.highest - RANGE.lowest + 1 },
        (_, i) => RANGE.lowest + i,
      )
        .filter((keyNumber) => classes.includes(keyNumber % 12))
        .toSorted((a, b) => Math.abs(a - last) - Math.abs(b - last));
      last = near[random.index(3)]!;
      return [{ startTick: at, endTick: at + 240 + 240 * random.index(4), keyNumber: last }];
    }),
  );
}
