import type { KeyNumber } from '../../../core/harmony/pitch.ts';

/** Sizes of a drawn keyboard in units of its drawing; a white key is one wide. */
export const KEY_SIZES = { whiteLength: 4.4, blackWidth: 0.6, blackLength: 2.7 } as const;

/** The lowest and the highest key drawn, both white. */
export type KeyboardSpan = { readonly lowest: KeyNumber; readonly highest: KeyNumber };

/** A key's place in the drawing: left edge, width and length from the top. */
export type KeyBox = {
  readonly key: KeyNumber;
  readonly isBlack: boolean;
  readonly x: number;
  readonly width: number;
  readonly length: number;
};

const BLACK = [1, 3, 6, 8, 10];

export function isBlackKey(key: KeyNumber): boolean {
  return BLACK.includes(((key % 12) + 12) % 12);
}

/** White keys below a key, counted from key 0. */
function whitesBelow(key: KeyNumber): number {
  const octave = Math.floor(key / 12);
  const inOctave = key - 12 * octave;
  return 7 * octave + inOctave - BLACK.filter((black) => black < inOctave).length;
}

/** Where a drawing begins and ends well: below a C or F, above an E or B. */
const STARTS = [0, 5];
const ENDS = [4, 11];

function chroma(key: KeyNumber): number {
  return ((key % 12) + 12) % 12;
}

/**
 * The stretch of keyboard that shows all of these keys, from a C or F to an E or B, so that groups of
 * black keys stay whole; an octave around middle C where there are none.
 */
export function spanAround(keys: readonly KeyNumber[]): KeyboardSpan {
  if (keys.length === 0) return { lowest: 60, highest: 71 };
  let lowest = Math.min(...keys);
  let highest = Math.max(...keys);
  while (!STARTS.includes(chroma(lowest))) lowest -= 1;
  while (!ENDS.includes(chroma(highest))) highest += 1;
  return { lowest, highest };
}

/** White keys in a span. */
export function whiteCount({ lowest, highest }: KeyboardSpan): number {
  return whitesBelow(highest) - whitesBelow(lowest) + 1;
}

/** Where a key is drawn in a span, in widths of a white key from the span's left edge. */
export function keyBox(key: KeyNumber, { lowest }: KeyboardSpan): KeyBox {
  const isBlack = isBlackKey(key);
  const place = whitesBelow(key) - whitesBelow(lowest);
  return isBlack
    ? {
        key,
        isBlack,
        x: place - KEY_SIZES.blackWidth / 2,
        width: KEY_SIZES.blackWidth,
        length: KEY_SIZES.blackLength,
      }
    : { key, isBlack, x: place, width: 1, length: KEY_SIZES.whiteLength };
}

/** All keys of a span, the white ones first, so that black ones are drawn over them. */
export function keyBoxes(span: KeyboardSpan): KeyBox[] {
  const keys = Array.from({ length: span.highest - span.lowest + 1 }, (_, i) => span.lowest + i);
  const boxes = keys.map((key) => keyBox(key, span));
  return [...boxes.filter((box) => !box.isBlack), ...boxes.filter((box) => box.isBlack)];
}

/** The middle of a key across, in widths of a white key. */
export function keyMiddle(key: KeyNumber, span: KeyboardSpan): number {
  const { x, width } = keyBox(key, span);
  return x + width / 2;
}

/** The widest and the narrowest white key of a small keyboard that can still be read, in CSS pixels. */
const WHITE_PX = { widest: 19, narrowest: 11.5 } as const;

/** How many small keyboards of a span stand beside each other in a width, and how wide each is, in CSS pixels. */
export function keyboardsInLine(
  span: KeyboardSpan,
  widthPx: number,
  gapPx: number,
): { readonly count: number; readonly keyboardPx: number } {
  const whites = whiteCount(span);
  const narrowest = whites * WHITE_PX.narrowest;
  const count = Math.max(1, Math.min(4, Math.floor((widthPx + gapPx) / (narrowest + gapPx))));
  const room = (widthPx - (count - 1) * gapPx) / count;
  return { count, keyboardPx: Math.min(room, whites * WHITE_PX.widest) };
}

/** Heights in a small keyboard's drawing, in CSS pixels: the fingers above, the ways to the next chord below. */
const FINGERS_PX = 20;
const WAYS_PX = 34;

/** Where everything of a small keyboard's drawing stands from its top, in CSS pixels. */
export function drawingSizes(span: KeyboardSpan, widthPx: number) {
  const white = widthPx / whiteCount(span);
  const keys = { top: FINGERS_PX, bottom: FINGERS_PX + KEY_SIZES.whiteLength * white };
  return {
    white,
    fingers: { baseline: FINGERS_PX - 5 },
    keys,
    ways: { top: keys.bottom + 4, bottom: keys.bottom + WAYS_PX - 4 },
    height: keys.bottom + WAYS_PX,
  };
}

/** Ascending places moved apart, where they lie closer than `least`, by as little as keeps them around where they were. */
export function spreadApart(places: readonly number[], least: number): number[] {
  const spread = [...places];
  for (let i = 1; i < spread.length; i++) {
    const overlap = least - (spread[i]! - spread[i - 1]!);
    if (overlap <= 0) continue;
    spread[i - 1]! -= overlap / 2;
    spread[i]! += overlap / 2;
  }
  return spread;
}
