import {
  barTicks,
  beatLengths,
  beatStarts,
  groupStarts,
  hasGroupedBeats,
  type Meter,
} from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { HandPlaces } from './handRules.ts';
import type { Pattern } from './pattern.ts';

/** The bars that the strokes stand in. */
export type HandFrame = Pick<Pattern, 'meter' | 'bars'>;

function halfBeatStarts(meter: Meter): Ticks[] {
  // A dotted beat divides in three, so its half beats are its eighths.
  const parts = hasGroupedBeats(meter) ? 3 : 2;
  const lengths = beatLengths(meter);
  return beatStarts(meter).flatMap((start, i) =>
    Array.from({ length: parts }, (_, part) => start + Math.round((part * lengths[i]!) / parts)),
  );
}

/** The beats between the stressed ones: 2 and 4, or 2 and 3 of three; in 6/8 the second beat. */
function weakBeatStarts(meter: Meter): Ticks[] {
  const stressed = hasGroupedBeats(meter) ? [0] : groupStarts(meter);
  const weak = beatStarts(meter).filter((start) => !stressed.includes(start));
  return weak.length > 0 ? weak : beatStarts(meter);
}

const PLACES: Readonly<Record<Exclude<HandPlaces, 'all'>, (meter: Meter) => readonly Ticks[]>> = {
  'half-beats': halfBeatStarts,
  beats: beatStarts,
  'weak-beats': weakBeatStarts,
  groups: groupStarts,
  downbeats: () => [0],
};

/** All such places of the frame's bars, ascending, in ticks from its start. */
export function placesIn(frame: HandFrame, at: Exclude<HandPlaces, 'all'>): Ticks[] {
  const bar = barTicks(frame.meter);
  return Array.from({ length: frame.bars }, (_, i) =>
    PLACES[at](frame.meter).map((start) => i * bar + start),
  ).flat();
}
