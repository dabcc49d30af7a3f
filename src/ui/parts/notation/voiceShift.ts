import { headWidth, type Units } from './glyphs.ts';
import type { WrittenEvent } from './writtenBars.ts';

/**
 * How far the lower voice's note moves to the right where it meets the upper voice's note of the
 * same moment: not at all where they are a third or more apart or share one head, a head's width
 * at a second, a little more where they cross (common practice). Rests never move.
 */
export function lowerVoiceShift(upper: WrittenEvent, lower: WrittenEvent): Units {
  const lowest = upper.heads[0];
  const highest = lower.heads.at(-1);
  if (!lowest || !highest) return 0;
  const gap = lowest.place - highest.place;
  if (gap >= 2 || (gap === 0 && sharesHead(upper, lower))) return 0;
  return headWidth(upper.event.written.value) + (gap === 1 ? 0 : 2);
}

function sharesHead({ event: a }: WrittenEvent, { event: b }: WrittenEvent): boolean {
  return (
    Math.min(a.written.value, 4) === Math.min(b.written.value, 4) &&
    a.written.dots === b.written.dots
  );
}
