import { BPM_RANGE, type Bpm } from '../../../core/time/tempoMap.ts';
import type { Seconds, Ticks } from '../../../core/time/ticks.ts';

/** A longer wait than this between two taps begins a new count: the slowest tempo that can be set. */
const LONGEST_BEAT_SEC: Seconds = 60 / BPM_RANGE.lowest;

/** The last taps that count. */
const TAPS = 9;

/** The taps so far with one more, those before a long wait forgotten; the latest nine at most. */
export function withTap(taps: readonly Seconds[], atSec: Seconds): Seconds[] {
  const last = taps.at(-1);
  const goesOn = last !== undefined && atSec - last <= LONGEST_BEAT_SEC;
  return [...(goesOn ? taps : []), atSec].slice(-TAPS);
}

/**
 * The tempo of taps in whole beats a minute, from the first to the last of them, within
 * `BPM_RANGE`; undefined before the third tap, as two say too little.
 */
export function tappedBpm(taps: readonly Seconds[]): Bpm | undefined {
  const [first, last] = [taps[0], taps.at(-1)];
  if (taps.length < 3 || first === undefined || last === undefined || last <= first)
    return undefined;
  const bpm = Math.round((60 * (taps.length - 1)) / (last - first));
  return Math.min(Math.max(bpm, BPM_RANGE.lowest), BPM_RANGE.highest);
}

/**
 * The tempo at which so many ticks last so many seconds, in whole beats of `beatTicks` a minute;
 * undefined where that is no tempo that can be set.
 */
export function stretchBpm(ticks: Ticks, beatTicks: Ticks, sec: Seconds): Bpm | undefined {
  const bpm = Math.round((60 * ticks) / (beatTicks * sec));
  return bpm >= BPM_RANGE.lowest && bpm <= BPM_RANGE.highest ? bpm : undefined;
}
