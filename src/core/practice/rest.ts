import type { Seconds } from '../time/ticks.ts';

/**
 * How long was played since the last rest worth the name, and how long it has been quiet since; in
 * seconds.
 */
export type PlayedTime = { readonly playedSec: Seconds; readonly quietSec: Seconds };

export const NOT_PLAYED: PlayedTime = { playedSec: 0, quietSec: 0 };

/** Quiet of this length is a rest: five minutes after twenty-five of playing (advice of performing-arts medicine, from memory). */
export const REST_SEC: Seconds = 5 * 60;

/** Playing time after which a rest is suggested unless the player chooses another, in minutes. */
export const USUAL_PLAYING_MINUTES = 25;

/** The played time after `sec` more seconds, played or quiet. A quiet of `REST_SEC` begins it anew. */
export function playedAfter(before: PlayedTime, isPlaying: boolean, sec: Seconds): PlayedTime {
  if (isPlaying) return { playedSec: before.playedSec + sec, quietSec: 0 };
  const quietSec = before.quietSec + sec;
  return quietSec >= REST_SEC ? NOT_PLAYED : { ...before, quietSec };
}

/** Whether a rest is due after so many minutes of playing. */
export function isRestDue(time: PlayedTime, afterMinutes: number): boolean {
  return time.playedSec >= afterMinutes * 60;
}
