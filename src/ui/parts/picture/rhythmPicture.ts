import { countSyllables } from '../../../core/rhythm/counts.ts';
import {
  type Hit,
  type Pattern,
  patternSteps,
  patternTicks,
  type Step,
  type Touch,
} from '../../../core/rhythm/pattern.ts';
import { barTicks } from '../../../core/time/meter.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import type { Pixels } from '../grid/systemLayout.ts';
import { bassSpans, type HeightSpan, voiceRows, voiceSpan } from '../grid/toneHeights.ts';

/** One hit in a small picture: a pen tick from `top` to `bottom` and, while it sounds, a line to `end`. */
export type PictureMark = {
  readonly hand: HandName;
  readonly touch: Touch;
  readonly x: Pixels;
  readonly top: Pixels;
  readonly bottom: Pixels;
  readonly end: Pixels;
};

/** A word or a figure of the count line; `isBeat` where it is a beat's number. */
export type PictureCount = { readonly x: Pixels; readonly text: string; readonly isBeat: boolean };

/** A pattern drawn small: counts in the middle, the right hand above, the left below. */
export type Picture = {
  readonly height: Pixels;
  /** The middle of the count line, and the edges of the part it takes. */
  readonly spine: { readonly top: Pixels; readonly middle: Pixels; readonly bottom: Pixels };
  readonly barLines: readonly Pixels[];
  readonly counts: readonly PictureCount[];
  readonly marks: readonly PictureMark[];
};

const RIGHT_HEIGHT: Pixels = 32;
const SPINE_HEIGHT: Pixels = 24;
const LEFT_HEIGHT: Pixels = 28;
const WHITE: Pixels = 3;

/** Narrower steps than this have no room for a syllable: a dot stands for it. */
const SYLLABLE_ROOM: Pixels = 15;

/** Between a mark and the line or the mark that follows it. */
const INSET: Pixels = 3;

/** The least that a tick is high, so that a single voice is still seen. */
const LEAST_TICK: Pixels = 12;

function spread(spans: readonly HeightSpan[]): HeightSpan {
  return {
    from: Math.min(...spans.map((span) => span.from)),
    to: Math.max(...spans.map((span) => span.to)),
  };
}

function heightOf(pattern: Pattern, hand: HandName): (hit: Hit) => HeightSpan {
  if (hand === 'left')
    return (hit) => spread(bassSpans((hit as Pattern['left'][number]).play, 0.4));
  const rows = voiceRows(pattern.right);
  return (hit) =>
    spread((hit as Pattern['right'][number]).play.map((tone) => voiceSpan(tone, rows)));
}

function marksOf(pattern: Pattern, hand: HandName, xOf: (tick: Ticks) => Pixels): PictureMark[] {
  const top = hand === 'right' ? 0 : RIGHT_HEIGHT + SPINE_HEIGHT + WHITE;
  const height = (hand === 'right' ? RIGHT_HEIGHT : LEFT_HEIGHT) - WHITE;
  const spanOf = heightOf(pattern, hand);
  const hits: readonly Hit[] = pattern[hand];
  return hits.map((hit) => {
    const { from, to } = spanOf(hit);
    const tick = Math.max((to - from) * height, LEAST_TICK);
    const middle = top + (1 - (from + to) / 2) * height;
    const upper = Math.min(Math.max(middle - tick / 2, top), top + height - tick);
    const x = xOf(hit.at) + INSET;
    const until = Math.min(hit.at + hit.length, patternTicks(pattern));
    return {
      hand,
      touch: hit.touch,
      x,
      top: upper,
      bottom: upper + tick,
      end: hit.held ? Math.max(xOf(until) - INSET, x) : x,
    };
  });
}

/** A step's count: the number of a beat always; a syllable where something is struck, as a dot where it has no room. */
function countOf(step: Step, syllable: string, width: Pixels, isStruck: boolean): string {
  if (step.index === 0) return syllable;
  if (!isStruck) return '';
  return width >= SYLLABLE_ROOM && syllable !== 'ta' ? syllable : '·';
}

/** The picture of a pattern on so many pixels. */
export function pictureOf(pattern: Pattern, width: Pixels): Picture {
  const total = patternTicks(pattern);
  const xOf = (tick: Ticks) => (tick / total) * width;
  const steps = patternSteps(pattern);
  const syllables = countSyllables(pattern);
  const struck = new Set([...pattern.left, ...pattern.right].map((hit) => hit.at));
  const counts = steps.map((step, i) => ({
    x: xOf(step.at) + INSET - 1,
    text: countOf(step, syllables[i] ?? '', xOf(step.length), struck.has(step.at)),
    isBeat: step.index === 0,
  }));
  return {
    height: RIGHT_HEIGHT + SPINE_HEIGHT + LEFT_HEIGHT,
    spine: {
      top: RIGHT_HEIGHT,
      middle: RIGHT_HEIGHT + SPINE_HEIGHT / 2,
      bottom: RIGHT_HEIGHT + SPINE_HEIGHT,
    },
    barLines: Array.from({ length: pattern.bars + 1 }, (_, bar) =>
      xOf(bar * barTicks(pattern.meter)),
    ),
    counts: counts.filter(({ text }) => text !== ''),
    marks: [...marksOf(pattern, 'right', xOf), ...marksOf(pattern, 'left', xOf)],
  };
}
