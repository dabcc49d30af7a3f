import type { SVGContext } from 'vexflow/core';
import type { Units } from './glyphs.ts';
import { MUSIC_FONT } from './notationFonts.ts';

/** The em of the music font in points, as the library counts sizes. */
const MUSIC_POINTS = 30;

/** Draws a sign of the music font with its origin at a place. */
export function drawSign(context: SVGContext, text: string, x: Units, y: Units): void {
  context.save();
  context.setFont(MUSIC_FONT, MUSIC_POINTS);
  context.fillText(text, x, y);
  context.restore();
}

/** Draws a filled shape from its path data. */
export function drawShape(context: SVGContext, pathData: string, className: string): void {
  const shape = context.create('path');
  shape.setAttribute('d', pathData);
  shape.setAttribute('stroke', 'none');
  shape.setAttribute('class', className);
  context.add(shape);
}
