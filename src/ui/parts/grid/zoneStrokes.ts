import type { LeftHit, RightHit } from '../../../core/rhythm/pattern.ts';
import type { BassTone, VoiceTone } from '../../../core/rhythm/tones.ts';
import type { Pixels } from './systemLayout.ts';
import { bassSpans, type HeightSpan, voiceSpan } from './toneHeights.ts';

/**
 * One tone of a hit with the upper and lower edge of its stroke. A tone of several voices is a tall
 * stroke out of which each voice sounds on: `tails` are the heights at which they do, low to high.
 */
export type ToneStroke = {
  readonly tone: BassTone | VoiceTone;
  readonly top: Pixels;
  readonly bottom: Pixels;
  readonly tails: readonly Pixels[];
};

/** The part of a row in which a hand's strokes are drawn. */
export type Zone = { readonly top: Pixels; readonly height: Pixels };

/** The thickest stroke of a single tone, and white between tones that lie close. */
const SINGLE_STROKE: Pixels = 28;
const BETWEEN: Pixels = 1;

/** A tall stroke shows three voices at most: low, middle, high. */
const MOST_TAILS = 3;

function singleStroke(
  tone: BassTone | VoiceTone,
  { from, to }: HeightSpan,
  { top, height }: Zone,
): ToneStroke {
  const middle = top + (1 - (from + to) / 2) * height;
  const half = Math.min((to - from) * height, SINGLE_STROKE) / 2 - BETWEEN;
  return { tone, top: middle - half, bottom: middle + half, tails: [] };
}

function rightStroke(tone: VoiceTone, zone: Zone, rows: number): ToneStroke {
  const span = voiceSpan(tone, rows);
  const voices = Math.min(Math.round((span.to - span.from) * rows), MOST_TAILS);
  if (voices < 2) return singleStroke(tone, span, zone);
  const top = zone.top + (1 - span.to) * zone.height + BETWEEN;
  const bottom = zone.top + (1 - span.from) * zone.height - BETWEEN;
  const gap = (bottom - top) / voices;
  return {
    tone,
    top,
    bottom,
    tails: Array.from({ length: voices }, (_, i) => bottom - (i + 0.5) * gap),
  };
}

/** The strokes of a right-hand hit in a zone of so many voice rows (`voiceRows`). */
export function rightStrokes(hit: RightHit, zone: Zone, rows: number): ToneStroke[] {
  return hit.play.map((tone) => rightStroke(tone, zone, rows));
}

/** The strokes of a left-hand hit, the root low, the tenth high. */
export function leftStrokes(hit: LeftHit, zone: Zone): ToneStroke[] {
  const spans = bassSpans(hit.play, Math.min(SINGLE_STROKE / zone.height, 1));
  return hit.play.map((tone, i) => singleStroke(tone, spans[i]!, zone));
}
