import type { SVGContext } from 'vexflow/core';
import { bracketPath } from './curves.ts';
import { drawShape, drawSign } from './drawing.ts';
import type { EngravedNote } from './engravedVoices.ts';
import { headWidth, type Units } from './glyphs.ts';
import { markSide, marksOf } from './marks.ts';

const HEAD_REACH = 6;

/** Where a note ends upwards or downwards as it stands now, beams included, on the system. */
export function noteEnd({ note, written }: EngravedNote, side: 'above' | 'below'): Units {
  const ys = note.getYs();
  const isStemSide = (written.stem === 'up') === (side === 'above');
  const tip = note.hasStem() && isStemSide ? [note.getStemExtents().topY] : [];
  return side === 'above'
    ? Math.min(...ys.map((y) => y - HEAD_REACH), ...tip)
    : Math.max(...ys.map((y) => y + HEAD_REACH), ...tip);
}

/** Draws a note's staccato dot and accent. */
export function drawMarks(context: SVGContext, engraved: EngravedNote): void {
  const { note, written, voices, middle } = engraved;
  if (written.heads.length === 0) return;
  const side = markSide(written, voices);
  const centre = note.getNoteHeadBeginX() + headWidth(written.event.written.value) / 2;
  for (const mark of marksOf(written, side, middle - noteEnd(engraved, side)))
    drawSign(context, mark.text, centre - mark.width / 2, middle - mark.y);
}

/** Draws the brackets round a ghost note, one pair for the whole chord. */
export function drawGhostBrackets(context: SVGContext, { note, written }: EngravedNote): void {
  if (!written.event.articulations.includes('ghost')) return;
  const ys = note.getYs();
  const [top, bottom] = [Math.min(...ys) - 9, Math.max(...ys) + 9];
  const { modLeftPx, modRightPx, leftDisplacedHeadPx, rightDisplacedHeadPx } = note.getMetrics();
  const left = note.getNoteHeadBeginX() - leftDisplacedHeadPx - modLeftPx;
  const right = note.getNoteHeadEndX() + rightDisplacedHeadPx + modRightPx;
  drawShape(context, bracketPath(left - 1, top, bottom, 'left'), 'notation-ghost');
  drawShape(context, bracketPath(right + 1, top, bottom, 'right'), 'notation-ghost');
}
