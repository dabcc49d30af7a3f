import type { Seconds } from '../core/time/ticks.ts';
import type { RecordedOnset } from './heardRecording.ts';

/** Divisions of the beat on which attacks may gather: beats, halves, thirds, quarters, sixths. */
const DIVISIONS = [1, 2, 3, 4, 6];

/**
 * How far attacks gather on the beats or on one of their divisions, 0 to 1: the length of the mean
 * of their phases as arrows, weighed by strength, along the direction of the beat itself. Attacks at
 * random give about 0.1; rendered bands and drummers mostly 0.5 to 0.9. 0 without attacks.
 */
export function gathering(beats: readonly Seconds[], attacks: readonly RecordedOnset[]): number {
  const sums = DIVISIONS.map(() => 0);
  let weight = 0;
  let k = 0;
  for (const { sec, strength } of attacks) {
    while (k + 1 < beats.length && beats[k + 1]! <= sec) k++;
    if (k + 1 >= beats.length || sec < beats[0]!) continue;
    const phase = (sec - beats[k]!) / (beats[k + 1]! - beats[k]!);
    DIVISIONS.forEach((division, i) => {
      sums[i]! += strength * Math.cos(2 * Math.PI * division * phase);
    });
    weight += strength;
  }
  return weight > 0 ? Math.max(0, ...sums) / weight : 0;
}

/** Gathering that attacks of speech reach by chance, and that of most rendered music. */
const NO_GATHERING = 0.3;
const FULL_GATHERING = 0.7;

/** A mean change from one interval to the next that players make, and one that no band makes, as ratios − 1. */
const PLAYED_CHANGE = 0.02;
const TORN_CHANGE = 0.08;

/**
 * How sure it is that these are beats of music that is played in time, 0 to 1: attacks gather on
 * them, and the tempo does not jump about. Speech and singing alone stay low, noise at 0.
 */
export function beatConfidence(
  beats: readonly Seconds[],
  attacks: readonly RecordedOnset[],
): number {
  const intervals = beats.slice(1).map((beat, i) => beat - beats[i]!);
  const changes = intervals.slice(1).map((next, i) => Math.abs(next / intervals[i]! - 1));
  const change = changes.reduce((sum, value) => sum + value, 0) / Math.max(1, changes.length);
  const gathered = between(NO_GATHERING, FULL_GATHERING, gathering(beats, attacks));
  return gathered * (1 - between(PLAYED_CHANGE, TORN_CHANGE, change));
}

function between(none: number, full: number, value: number): number {
  return Math.min(1, Math.max(0, (value - none) / (full - none)));
}
