import type { Swing } from '../../../core/rhythm/swing.ts';
import { hasGroupedBeats, type Meter } from '../../../core/time/meter.ts';

/** Up to which ratio of long to short each word holds (the triplet is 2 : 1, the dotted figure 3 : 1). */
const WORDS: readonly (readonly [upTo: number, words: string])[] = [
  [1.02, 'straight'],
  [1.45, 'a little'],
  [1.85, 'easy'],
  [2.15, 'triplet feel'],
  [2.75, 'hard'],
  [Number.POSITIVE_INFINITY, 'dotted'],
];

/** A ratio as it is said and written: "straight", "a little 1.3 : 1", "triplet feel 2 : 1". */
export function swingWords(ratio: number): string {
  const words = WORDS.find(([upTo]) => ratio < upTo)?.[1] ?? 'dotted';
  return ratio < 1.02 ? words : `${words} ${Number(ratio.toFixed(2))} : 1`;
}

/** Levels that a meter can swing at: eighths only where the beat is not itself a group of eighths. */
export function swingLevels(meter: Meter): readonly Swing['level'][] {
  return hasGroupedBeats(meter) ? ['sixteenth'] : ['eighth', 'sixteenth'];
}
