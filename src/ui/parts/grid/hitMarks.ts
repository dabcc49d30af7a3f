import { createContext } from 'react';
import type { Ticks } from '../../../core/time/ticks.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';

/** A teacher's remark on a hit: an easier version leaves it out, or it asks too much of the hand. */
export type HitRemark = 'left out' | 'too much';

/** Remarks on the hits of each hand, by the tick of the hit. */
export type HitRemarks = Readonly<Record<HandName, ReadonlyMap<Ticks, HitRemark>>>;

export const NO_MARKS: HitRemarks = { left: new Map(), right: new Map() };

/** The remarks that are drawn on the hits of a grid. */
export const HitMarksContext = createContext(NO_MARKS);
