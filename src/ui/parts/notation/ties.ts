import type { SVGContext } from 'vexflow/core';
import type { KeyNumber } from '../../../core/harmony/pitch.ts';
import { tiePath } from './curves.ts';
import { drawShape } from './drawing.ts';
import type { EngravedNote, EngravedVoice } from './engravedVoices.ts';
import type { Units } from './glyphs.ts';
import { musicEndX } from './systems.ts';

type OpenTie = {
  readonly x: Units;
  readonly y: Units;
  readonly side: 'above' | 'below';
  /** As far as it reaches where no note takes it up on this system. */
  readonly farthestX: Units;
};

/** Room between a tie and the heads it joins, and how long a tie from another system is. */
const HEAD_ROOM: Units = 1.5;
const FROM_BEFORE: Units = 20;

/**
 * Draws the ties of one staff on a system: from head to head; to the bar line where the music goes on
 * elsewhere (the next system, a repeat); from before the note that was struck on the system before.
 */
export function drawTies(context: SVGContext, voices: readonly EngravedVoice[]): void {
  const open = new Map<KeyNumber, OpenTie>();
  const notes = voices
    .flatMap((voice) => voice.notes)
    .toSorted((a, b) => a.written.event.startTick - b.written.event.startTick);
  for (const engraved of notes) {
    const toX = engraved.note.getTieLeftX() - HEAD_ROOM;
    for (const [i, { note: head }] of engraved.written.heads.entries()) {
      const tie = open.get(head.keyNumber);
      open.delete(head.keyNumber);
      if (head.tiedFromBefore) draw(context, tie ?? tieFromBefore(engraved, i, toX), toX);
    }
    for (const [i, { note: head }] of engraved.written.heads.entries())
      if (head.tiedToNext) open.set(head.keyNumber, tieFrom(engraved, i));
  }
  for (const tie of open.values()) draw(context, tie, tie.farthestX);
}

function draw(context: SVGContext, tie: OpenTie, toX: Units): void {
  drawShape(context, tiePath(tie, toX, tie.side), 'notation-tie');
}

function tieFrom(engraved: EngravedNote, index: number): OpenTie {
  const x = engraved.note.getTieRightX() + HEAD_ROOM;
  return { x, ...bend(engraved, index), farthestX: Math.max(x + 10, musicEndX(engraved.bar)) };
}

function tieFromBefore(engraved: EngravedNote, index: number, toX: Units): OpenTie {
  return { x: toX - FROM_BEFORE, ...bend(engraved, index), farthestX: toX };
}

/** Where a tie bends: away from the stem, in chords the upper half up and the lower half down, of two voices each outwards. */
function bend({ note, written, voices }: EngravedNote, index: number): Pick<OpenTie, 'y' | 'side'> {
  const { heads, stem } = written;
  const outside = voices > 1 ? stem === 'up' : stem === 'down';
  const inUpperHalf = 2 * index > heads.length - 1;
  const isMiddle = 2 * index === heads.length - 1;
  const isAbove = voices > 1 || isMiddle ? outside : inUpperHalf;
  const y = note.getYs()[index]!;
  const room = heads.length === 1 ? 5 : 2.5;
  return isAbove ? { side: 'above', y: y - room } : { side: 'below', y: y + room };
}
