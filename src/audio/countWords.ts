import type { Seconds } from '../core/time/ticks.ts';

/** Time from the beginning of each word's file to its middle as a beat is heard, from “one” on. */
const MIDDLES_SEC: readonly Seconds[] = [];

/** How long before its beat the word for a number must begin, so that it is heard on the beat; 0 for what is not spoken. */
export function wordAheadSec(says: number | undefined): Seconds {
  return (says !== undefined && MIDDLES_SEC[says - 1]) || 0;
}
