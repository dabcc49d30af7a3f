import { type Swing, swungTick } from '../../../core/rhythm/swing.ts';
import type { Meter } from '../../../core/time/meter.ts';

/** Halvings of the search for a straight tick: finer than a tick within the longest beat. */
const HALVINGS = 12;

/** No position is moved further by swing than this, in ticks. */
const FURTHEST = 240;

/**
 * Where a position that sounds with swing stands in the straight grid, in ticks, not rounded: the
 * inverse of `swungTick`, within one tick.
 */
export function straightTick(swung: number, meter: Meter, swing: Swing): number {
  if (swing.ratio === 1) return swung;
  let low = swung - FURTHEST;
  let high = swung + 1;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (swungTick(middle, meter, swing) <= swung) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
