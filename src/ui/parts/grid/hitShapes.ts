import type { Hit, Touch } from '../../../core/rhythm/pattern.ts';
import { fittingPx, type TypeSizes, textEms } from '../../kit/typeWidth.ts';
import { type Pixels, type System, tickX } from './systemLayout.ts';
import type { ToneStroke } from './zoneStrokes.ts';

/**
 * The part of a hit that lies in one system. `from` and `to` are x; the shares say which stretch of
 * the whole hit it is, 0 to 1, so that a hit that goes on in the next system goes on fading there.
 */
export type HitPiece = {
  readonly from: Pixels;
  readonly to: Pixels;
  readonly fromShare: number;
  readonly toShare: number;
};

/** White between a line and the stroke at it, and between one hit and the next. */
const GAP: Pixels = 3;

/**
 * A piano's tone fades from the attack on: so much of a stroke's height is left at its end. A long
 * stroke fades down to `most`, one of no length would keep `least`.
 */
const FADED = { least: 0.85, most: 0.24, over: 130 } as const;

/** The thinnest that a fading stroke gets. */
const THINNEST: Pixels = 3.5;

/** Points along each edge of a fading stroke. */
const EDGE_POINTS = 10;

/** Breadth of a tall stroke out of which several voices sound, the higher the broader; and of each voice at its beginning. */
const TALL = { share: 0.17, least: 21, most: 28 } as const;
const TAIL: Pixels = 10;

/** A short stroke takes about so much of its step, between a pen's breadth and a finger's. */
const SHORT = { share: 0.36, least: 17, most: 24 } as const;

/** Room that a ghost's brackets take on each side. */
const BRACKET: Pixels = 7;

/** The part of a hit in a system; undefined where it does not sound there. */
export function hitPiece(system: System, hit: Pick<Hit, 'at' | 'length'>): HitPiece | undefined {
  const fromTick = Math.max(hit.at, system.fromTick);
  const toTick = Math.min(hit.at + hit.length, system.toTick);
  if (toTick <= fromTick) return undefined;
  const from = tickX(system, fromTick) + (fromTick === hit.at ? GAP : 0);
  // A hit that goes on in the next system, or the next round, is drawn up to the bar line.
  const white = toTick === hit.at + hit.length ? GAP : 0;
  return {
    from,
    to: Math.max(tickX(system, toTick) - white, from + GAP),
    fromShare: (fromTick - hit.at) / hit.length,
    toShare: (toTick - hit.at) / hit.length,
  };
}

/** Share of its attack's height that a stroke of some length has after a share of it: it fades fast, then slowly. */
function heightAfter(share: number, length: Pixels): number {
  const over = Math.min(length / FADED.over, 1);
  const left = FADED.least + over * (FADED.most - FADED.least);
  return left + (1 - left) * (1 - share) ** 2;
}

type Point = readonly [Pixels, Pixels];

function outlineOf(points: readonly Point[]): string {
  return `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
}

/** A held stroke as a broad pen draws it: full height at the attack, then thinner and thinner about its middle. */
function fading(piece: HitPiece, top: Pixels, bottom: Pixels): string {
  const middle = (top + bottom) / 2;
  const whole = (piece.to - piece.from) / (piece.toShare - piece.fromShare);
  const upper = Array.from({ length: EDGE_POINTS + 1 }, (_, i): Point => {
    const along = i / EDGE_POINTS;
    const share = piece.fromShare + along * (piece.toShare - piece.fromShare);
    const height = Math.max((bottom - top) * heightAfter(share, whole), THINNEST);
    return [piece.from + along * (piece.to - piece.from), middle - height / 2];
  });
  return outlineOf([...upper, ...upper.map(([x, y]): Point => [x, 2 * middle - y]).toReversed()]);
}

/** An upright stroke, its right edge a little cut, as a pen that is lifted at once. */
function upright(from: Pixels, to: Pixels, top: Pixels, bottom: Pixels): string {
  const cut = Math.min(5, (bottom - top) / 6);
  return outlineOf([
    [from, top],
    [to, top + cut],
    [to, bottom - cut],
    [from, bottom],
  ]);
}

/** An approach note: a stroke that leans upwards into the beat at its end. */
function leaning(piece: HitPiece, top: Pixels, bottom: Pixels): string {
  const pen = Math.max((bottom - top) * 0.42, THINNEST);
  return outlineOf([
    [piece.from, bottom - pen],
    [piece.to, top],
    [piece.to, top + pen],
    [piece.from, bottom],
  ]);
}

/** Several voices: a tall stroke, and out of it each voice sounding on; a ghost's are mere lines. */
function tall(piece: HitPiece, stroke: ToneStroke, touch: Touch): string {
  const { top, bottom, tails } = stroke;
  const starts = piece.fromShare === 0;
  const end = stemEnd(piece, stroke);
  const stem = starts ? upright(piece.from, end, top, bottom) : '';
  const voice = (y: Pixels) =>
    touch === 'ghost'
      ? `M${starts ? end : piece.from} ${y}H${piece.to}`
      : fading(piece, y - TAIL / 2, y + TAIL / 2);
  return stem + tails.map(voice).join('');
}

function stemEnd({ from, to }: HitPiece, { top, bottom }: ToneStroke): Pixels {
  const wanted = Math.min(Math.max((bottom - top) * TALL.share, TALL.least), TALL.most);
  return Math.min(from + wanted, to);
}

function shortEnd({ from, to }: HitPiece): Pixels {
  const wanted = Math.min(Math.max((to - from) * SHORT.share, SHORT.least), SHORT.most);
  return Math.min(from + wanted, to);
}

/** Where a word stands by a stroke: its left edge, or its middle where it is turned upwards; and how large it is. */
export type WordSpot = {
  readonly x: Pixels;
  readonly y: Pixels;
  readonly size: Pixels;
  readonly turned: boolean;
  readonly outside: boolean;
};

/** What is drawn for one tone of a hit: an SVG outline between two x, the place of its word, and of a dot where it is short. */
export type StrokeShape = {
  readonly outline: string;
  readonly from: Pixels;
  readonly to: Pixels;
  readonly word: WordSpot;
  readonly dot?: Pixels;
};

/** A word is as large as there is room for: from the stand large ones are read. */
const WORD_SIZES: TypeSizes = { smallest: 15, usual: 20 };

/** White before and behind a word inside a stroke. */
const WORD_WHITE = { before: 5, behind: 2 } as const;

/** The size of a word in a stroke so long and so broad; undefined where it does not fit. */
function wordSize(text: string, length: Pixels, breadth: Pixels): Pixels | undefined {
  const room = length - WORD_WHITE.before - WORD_WHITE.behind;
  if (textEms(text) * WORD_SIZES.smallest > room) return undefined;
  return Math.min(fittingPx(text, room, WORD_SIZES), Math.max(breadth * 0.8, WORD_SIZES.smallest));
}

/** A word stands inside its stroke, turned upwards in a tall one; where it fits in neither way, behind it. */
function wordSpot(
  text: string,
  from: Pixels,
  to: Pixels,
  { top, bottom }: ToneStroke,
  behind: Pixels,
): WordSpot {
  const y = (top + bottom) / 2;
  const along = wordSize(text, to - from, bottom - top);
  if (along !== undefined)
    return { x: from + WORD_WHITE.before, y, size: along, turned: false, outside: false };
  const upwards = wordSize(text, bottom - top, to - from);
  if (upwards !== undefined)
    return { x: (from + to) / 2, y, size: upwards, turned: true, outside: false };
  return { x: behind, y, size: WORD_SIZES.smallest + 1, turned: false, outside: true };
}

/** The stroke of one tone of a hit in one system; `text` is the word that names it. */
export function strokeShape(
  hit: Hit,
  whole: HitPiece,
  stroke: ToneStroke,
  text: string,
): StrokeShape {
  const { top, bottom, tails, tone } = stroke;
  const inset = hit.touch === 'ghost' ? BRACKET : 0;
  const from = whole.from + inset;
  const piece = { ...whole, from, to: Math.max(whole.to - inset, from + GAP) };
  const to = hit.held ? piece.to : shortEnd(piece);
  const dot = hit.held ? {} : { dot: to + inset + 6 };
  const behind = hit.held ? to + inset + 4 : to + inset + 13;
  if (tone === 'approach') {
    const word = { x: from, y: top - 7, size: 17, turned: false, outside: true };
    return { outline: leaning({ ...piece, to }, top, bottom), from, to, word, ...dot };
  }
  const many = tails.length > 0;
  const inkEnd = many ? Math.min(stemEnd(piece, stroke), to) : to;
  const word = wordSpot(text, from, inkEnd, stroke, behind);
  const held = () => (many ? tall(piece, stroke, hit.touch) : fading(piece, top, bottom));
  const outline = hit.held ? held() : upright(from, inkEnd, top, bottom);
  return { outline, from, to: many && !hit.held ? inkEnd : to, word, ...dot };
}
