import { hasGroupedBeats, type Meter } from '../time/meter.ts';
import type { HandName } from '../voicing/voicing.ts';
import { density } from './measures.ts';
import type { Hands, Pattern } from './pattern.ts';

/** How a pattern goes along: in even halves, in uneven ones, or in beats of three (6/8, 12/8). */
export const FEELS = ['straight', 'swung', 'in threes'] as const;

export type Feel = (typeof FEELS)[number];

/** How much is struck: up to one time a beat, up to two, more. */
export const DENSITIES = ['sparse', 'medium', 'dense'] as const;

export type DensityClass = (typeof DENSITIES)[number];

/** From this ratio on a pattern is called swung. */
const SWUNG_RATIO = 1.05;

/** A hand is the busier one when it strikes so many times as often as the other. */
const BUSIER = 1.25;

function isInThrees(meter: Meter): boolean {
  return hasGroupedBeats(meter) && meter.groups.every((units) => units === 3);
}

/** The feel of a pattern, by its meter and its swing. */
export function feelOf({ meter, swing }: Pick<Pattern, 'meter' | 'swing'>): Feel {
  if (isInThrees(meter)) return 'in threes';
  return swing.ratio >= SWUNG_RATIO ? 'swung' : 'straight';
}

/** How much the hands strike in a beat on average, what they strike together counted once. */
export function densityClass(pattern: Hands & Pick<Pattern, 'meter' | 'bars'>): DensityClass {
  const ticks = new Set([...pattern.left, ...pattern.right].map((hit) => hit.at));
  const perBeat = density(
    [...ticks].map((at) => ({ at })),
    pattern,
  );
  if (perBeat <= 1) return 'sparse';
  return perBeat <= 2 ? 'medium' : 'dense';
}

/** The hand that strikes clearly more often (a quarter more at least); `both` where neither does. */
export function busyHand({ left, right }: Hands): HandName | 'both' {
  if (left.length >= BUSIER * right.length && left.length > right.length) return 'left';
  return right.length >= BUSIER * left.length && right.length > left.length ? 'right' : 'both';
}
