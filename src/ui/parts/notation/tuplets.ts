import type { SVGContext } from 'vexflow/core';
import { drawSign } from './drawing.ts';
import type { EngravedNote, EngravedVoice } from './engravedVoices.ts';
import { REST_REACH, STAFF_REACH, TUPLET_FIGURE, tupletFigure, type Units } from './glyphs.ts';
import { tupletSide } from './inkReach.ts';
import { noteEnd } from './noteMarks.ts';
import { tupletRuns } from './stemDirections.ts';

const HALF_SPACE = 5;
const FIGURE_CLEAR: Units = 5;
const BRACKET_CLEAR: Units = 11;
const HOOK: Units = 7;
const LINE: Units = 1.2;

/** Draws the figure of every tuplet of a voice, with a bracket where no beam joins it. */
export function drawTuplets(context: SVGContext, { notes }: EngravedVoice): void {
  for (const run of tupletRuns(notes.map(({ written }) => written.event)))
    drawTuplet(
      context,
      run.map((i) => notes[i]!),
    );
}

function drawTuplet(context: SVGContext, notes: readonly EngravedNote[]): void {
  const side = tupletSide(notes.map(({ written }) => written)) === 'up' ? 'above' : 'below';
  const figure = tupletFigure(notes[0]!.written.event.written.tuplet!.actual);
  const width = figure.length * TUPLET_FIGURE.width;
  context.openGroup('notation-tuplet');
  if (isUnderOneBeam(notes)) {
    const [first, last] = [notes[0]!.note, notes.at(-1)!.note];
    const centre = (first.getStemX() + last.getStemX()) / 2;
    const tip = (first.getStemExtents().topY + last.getStemExtents().topY) / 2;
    const under = side === 'above' ? 0 : TUPLET_FIGURE.height;
    const out = side === 'above' ? -FIGURE_CLEAR : FIGURE_CLEAR;
    drawSign(context, figure, centre - width / 2, tip + out + under);
  } else drawBracket(context, notes, side, figure, width);
  context.closeGroup();
}

function isUnderOneBeam(notes: readonly EngravedNote[]): boolean {
  const beams = notes.map(({ written }) => written.event.beam);
  return (
    notes.length > 1 &&
    beams[0] === 'begin' &&
    beams.at(-1) === 'end' &&
    beams.slice(1, -1).every((beam) => beam === 'continue')
  );
}

function drawBracket(
  context: SVGContext,
  notes: readonly EngravedNote[],
  side: 'above' | 'below',
  figure: string,
  width: Units,
): void {
  const out = side === 'above' ? -1 : 1;
  const ends = notes.map((note) => out * (endOf(note, side) - note.middle));
  const reach = Math.max(STAFF_REACH, ...ends) + BRACKET_CLEAR;
  const y = notes[0]!.middle + out * reach;
  const [left, right] = [notes[0]!.note.getNoteHeadBeginX(), notes.at(-1)!.note.getNoteHeadEndX()];
  const centre = (left + right) / 2;
  const gap = width / 2 + 3;
  drawSign(context, figure, centre - width / 2, y + TUPLET_FIGURE.height / 2);
  for (const [x, toX, hookX] of [
    [left, centre - gap, left],
    [centre + gap, right, right - LINE],
  ] as const) {
    if (toX > x) context.fillRect(x, y - LINE / 2, toX - x, LINE);
    context.fillRect(hookX, out < 0 ? y : y - HOOK, LINE, HOOK);
  }
}

function endOf(engraved: EngravedNote, side: 'above' | 'below'): Units {
  const { written, middle } = engraved;
  if (written.heads.length > 0) return noteEnd(engraved, side);
  const { above, below } = REST_REACH[written.event.written.value];
  const y = middle - written.restPlace * HALF_SPACE;
  return side === 'above' ? y - above : y + below;
}
