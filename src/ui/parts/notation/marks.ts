import { ACCENT, SPACE, STACCATO, STAFF_REACH, type Units } from './glyphs.ts';
import type { WrittenEvent } from './writtenBars.ts';

/** A sign over or under a note; `y` is its origin above the staff's middle line. */
export type Mark = {
  readonly text: string;
  readonly width: Units;
  readonly height: Units;
  readonly side: 'above' | 'below';
  readonly y: Units;
};

const HALF_SPACE = SPACE / 2;

/** On which side of a note its marks stand: by the heads where the staff has one voice, otherwise outside, by the stem. */
export function markSide({ stem }: WrittenEvent, voices: number): 'above' | 'below' {
  const isAbove = voices > 1 ? stem === 'up' : stem === 'down';
  return isAbove ? 'above' : 'below';
}

/**
 * Staccato dot and accent of a note, from the note outwards. `edge` is where the note ends on the
 * marks' side, in units above the middle line. The dot stands in the next space, never on a line; the
 * accent outside the staff (common practice).
 */
export function marksOf(written: WrittenEvent, side: 'above' | 'below', edge: Units): Mark[] {
  const outward = side === 'above' ? 1 : -1;
  const { articulations } = written.event;
  const marks: Mark[] = [];
  let reach = edge * outward;
  if (articulations.includes('staccato')) {
    const centre = dotCentre(reach);
    marks.push({ ...signOf(STACCATO, side), y: (centre - STACCATO.height / 2) * outward });
    reach = centre + STACCATO.height / 2;
  }
  if (articulations.includes('accent')) {
    const from = Math.max(reach + 4, STAFF_REACH + 4);
    marks.push({ ...signOf(ACCENT, side), y: from * outward });
  }
  return marks;
}

/** The middle of the next free space outwards from a note that reaches so far. */
function dotCentre(reach: Units): Units {
  const next = Math.ceil((reach + 3) / HALF_SPACE) * HALF_SPACE;
  const isOnLine = next <= STAFF_REACH && next % SPACE === 0;
  return isOnLine ? next + HALF_SPACE : next;
}

function signOf(sign: typeof STACCATO | typeof ACCENT, side: 'above' | 'below'): Omit<Mark, 'y'> {
  return { text: sign[side], width: sign.width, height: sign.height, side };
}

/** How far marks reach outwards from the middle line, at least `edge`. */
export function marksReach(marks: readonly Mark[], edge: Units): Units {
  return Math.max(edge, ...marks.map(({ y, height }) => Math.abs(y) + height));
}
