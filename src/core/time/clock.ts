import type { Seconds } from './ticks.ts';

/** Reads a running clock, in seconds from its own zero. */
export type Clock = () => Seconds;
