/** Musical time: whole parts of a quarter note, counted from the downbeat of bar 1 (negative in a count-in). */
export type Ticks = number;

/** Clock time in seconds. */
export type Seconds = number;

/** 480 holds 32nds (60), eighth triplets (160), sixteenth triplets (80) and quintuplets (96) as whole numbers. */
export const TICKS_PER_QUARTER = 480;

export const TICKS_PER_WHOLE = 4 * TICKS_PER_QUARTER;
