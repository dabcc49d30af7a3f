import { SVGContext } from 'vexflow/core';
import type { HandName } from '../../../core/voicing/voicing.ts';
import { type EngravedVoice, engravedVoices } from './engravedVoices.ts';
import { STAVES } from './notation.ts';
import { drawGhostBrackets, drawMarks } from './noteMarks.ts';
import type { SheetSystem } from './systems.ts';
import { drawTies } from './ties.ts';
import { drawTuplets } from './tuplets.ts';

/**
 * The notes of a system as they are drawn: heads, stems, flags, beams, accidentals, dots, rests,
 * ties, tuplets and marks, on the places of the layout. An `svg` to be put into that of the sheet, at
 * the system's own zero; each event is a group with its tick and hand. The fonts must be there
 * (`fontsReady`).
 */
export function engravedNotes(system: SheetSystem): SVGElement {
  const context = new SVGContext(document.createElement('div'));
  context.svg.setAttribute('overflow', 'visible');
  // The sheet around it is the picture.
  context.svg.setAttribute('role', 'presentation');
  for (const hand of STAVES) drawStaff(context, system, hand);
  return context.svg;
}

function drawStaff(context: SVGContext, system: SheetSystem, hand: HandName): void {
  const voices = system.bars.flatMap((bar) => engravedVoices(bar, hand, system.heights[hand]));
  for (const voice of voices) drawVoice(context, voice);
  drawTies(context, voices);
}

function drawVoice(context: SVGContext, voice: EngravedVoice): void {
  for (const { note, written, hand } of voice.notes) {
    const group = context.openGroup('event');
    group.setAttribute('data-tick', String(written.event.startTick));
    group.setAttribute('data-hand', hand);
    note.setContext(context).drawWithStyle();
    context.closeGroup();
  }
  for (const beam of voice.beams) beam.setContext(context).drawWithStyle();
  drawTuplets(context, voice);
  for (const engraved of voice.notes) {
    drawMarks(context, engraved);
    drawGhostBrackets(context, engraved);
  }
}
