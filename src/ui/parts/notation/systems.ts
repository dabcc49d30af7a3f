import { sameMeter } from '../../../core/time/meter.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { type BarSpacing, barSpacing, stretched } from './barSpacing.ts';
import type { Column } from './columns.ts';
import { meterNumber, TREBLE_CLEF, type Units } from './glyphs.ts';
import { textWidth } from './lettering.ts';
import type { Notation } from './notation.ts';
import { signatureSigns } from './staffPlaces.ts';
import { type SystemHeights, systemHeights } from './systemHeights.ts';
import { type EngravedBar, writtenBars } from './writtenBars.ts';

export type PlacedColumn = Column & { readonly x: Units };

/**
 * A bar on its system, from its left bar line (or the end of clef and signature) to its right one;
 * its notes have room from `notesX` on. `meterX` is where its time signature stands, if it has one; `opens` and `closes` are repeat signs.
 */
export type PlacedBar = {
  readonly index: number;
  readonly written: EngravedBar;
  readonly x: Units;
  readonly notesX: Units;
  readonly endX: Units;
  readonly meterX?: Units;
  readonly opens: boolean;
  readonly closes: boolean;
  readonly words?: string;
  readonly columns: readonly PlacedColumn[];
};

/**
 * One line of music on two staves. `x` is where the staves begin, `width` where they end; clef and
 * key signature stand at theirs. Words may go on beyond the staves: all ink ends at `reach`.
 */
export type SheetSystem = {
  readonly x: Units;
  readonly clefX: Units;
  readonly keyX: Units;
  readonly width: Units;
  readonly reach: Units;
  readonly bars: readonly PlacedBar[];
  readonly heights: SystemHeights;
};

/** Left of the staves stands the brace. */
const BRACE_ROOM: Units = 18;
const CLEF_ROOM: Units = 8;
/** Width of one sign of a key signature. */
export const SIGN_WIDTH: Units = 10.5;
const METER_ROOM: Units = 9;

/** A repeat sign with its dots, beyond a plain bar line: where it opens it stands clear of the time signature. */
const OPENING_ROOM: Units = 24;
const CLOSING_ROOM: Units = 17;

/**
 * How far springs are stretched so that a system reads well from a stand, and how far they may be
 * stretched or squeezed before it looks empty or crowded (our own choice).
 */
const EASIEST = 1.2;
const LOOSEST = 2;
const TIGHTEST = 0.85;

/** A bar before it is placed, with what only depends on the bar before it. */
type LooseBar = {
  readonly index: number;
  readonly written: EngravedBar;
  readonly spacing: BarSpacing;
  readonly meterWidth: Units;
  readonly opens: boolean;
  readonly closes: boolean;
  readonly words: string | undefined;
};

/**
 * The notation broken into systems that are `width` wide (less where the music is too short to
 * fill one), in drawing units. Bars are shared out so that all systems read about as easily; the spacing of a system is one for all its bars. A bar that is wider than
 * the width stands alone and is squeezed until its ink touches, and may then reach beyond it.
 */
export function sheetSystems(notation: Notation, width: Units): SheetSystem[] {
  const bars = looseBars(notation);
  const keyWidth = signatureSigns(notation.key).length * SIGN_WIDTH;
  const room = width - startX(keyWidth);
  return brokenBars(bars, room).map((line) => placedSystem(notation, line, keyWidth, width));
}

function startX(keyWidth: Units): Units {
  return BRACE_ROOM + CLEF_ROOM + TREBLE_CLEF.width + CLEF_ROOM + keyWidth;
}

function looseBars(notation: Notation): LooseBar[] {
  const { sheet, key, kind, repeated } = notation;
  return writtenBars(sheet, key).map((written, index) => {
    const before = sheet.bars[index - 1];
    const { meter } = written.bar;
    const hasMeter = kind === 'in-time' && !(before && sameMeter(before.meter, meter));
    return {
      index,
      written,
      spacing: barSpacing(written, kind),
      meterWidth: hasMeter
        ? METER_ROOM + Math.max(meterNumber(meter.beats).width, meterNumber(meter.unit).width)
        : 0,
      opens: repeated?.firstBar === index,
      closes: repeated?.lastBar === index,
      words: notation.words.find(({ bar }) => bar === index)?.text,
    };
  });
}

/** From the bar's left line to its first column. */
function leadIn({ spacing, meterWidth, opens }: LooseBar): Units {
  return meterWidth + (opens ? OPENING_ROOM : 0) + spacing.leadIn;
}

function barWidth(bar: LooseBar, factor: number): Units {
  return leadIn(bar) + stretched(bar.spacing, factor).at(-1)! + (bar.closes ? CLOSING_ROOM : 0);
}

/** The factor at which bars fill `room`, within what looks well. */
function fillingFactor(bars: readonly LooseBar[], room: Units): number {
  const widthAt = (factor: number) => bars.reduce((sum, bar) => sum + barWidth(bar, factor), 0);
  if (widthAt(LOOSEST) <= room) return LOOSEST;
  let [low, high] = [0, LOOSEST];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (widthAt(middle) <= room) low = middle;
    else high = middle;
  }
  return low;
}

/** How far a line is from reading easily: the square of a logarithm, so that half and double are as bad. */
function uneasiness(factor: number): number {
  return Math.log(Math.max(factor, 0.01) / EASIEST) ** 2;
}

/** The bars in lines, with the least sum of uneasiness over all ways to break them. */
function brokenBars(bars: readonly LooseBar[], room: Units): LooseBar[][] {
  type Broken = { readonly cost: number; readonly lines: readonly LooseBar[][] };
  const best: Broken[] = [{ cost: 0, lines: [] }];
  for (let end = 1; end <= bars.length; end++) {
    let least: Broken | undefined;
    for (let start = end - 1; start >= 0; start--) {
      const line = bars.slice(start, end);
      const factor = fillingFactor(line, room);
      // Longer lines to the same end are only more crowded.
      if (factor < TIGHTEST && line.length > 1) break;
      const cost = best[start]!.cost + uneasiness(factor);
      if (!least || cost < least.cost) least = { cost, lines: [...best[start]!.lines, line] };
    }
    best.push(least!);
  }
  return [...best.at(-1)!.lines];
}

function placedSystem(
  notation: Notation,
  line: readonly LooseBar[],
  keyWidth: Units,
  width: Units,
): SheetSystem {
  const factor = fillingFactor(line, width - startX(keyWidth));
  let x = startX(keyWidth);
  const bars = line.map((bar): PlacedBar => {
    const places = stretched(bar.spacing, factor);
    const first = x + leadIn(bar);
    const notesX = first - bar.spacing.leadIn;
    const placed: PlacedBar = {
      index: bar.index,
      written: bar.written,
      x,
      notesX,
      endX: x + barWidth(bar, factor),
      ...(bar.meterWidth > 0 && { meterX: x + METER_ROOM }),
      opens: bar.opens,
      closes: bar.closes,
      ...(bar.words !== undefined && { words: bar.words }),
      columns: bar.spacing.columns.map((column, i) => ({ ...column, x: first + places[i]! })),
    };
    x = placed.endX;
    return placed;
  });
  return {
    x: BRACE_ROOM,
    clefX: BRACE_ROOM + CLEF_ROOM,
    keyX: BRACE_ROOM + CLEF_ROOM + TREBLE_CLEF.width + CLEF_ROOM,
    width: x,
    bars,
    reach: Math.max(x, ...bars.map(wordsEnd)),
    heights: systemHeights(bars, notation.kind),
  };
}

/** Where words over a bar end, its own end where there are none. */
function wordsEnd({ words, columns, endX }: PlacedBar): Units {
  return words === undefined ? endX : columns[0]!.x + textWidth(words, 'words');
}

/** How far to the right notes and ties may go in a bar: its line, or the dots of its repeat sign. */
export function musicEndX({ closes, endX }: PlacedBar): Units {
  return endX - (closes ? CLOSING_ROOM : 0) - 2;
}

/** Where the column of a tick stands on a bar; the bar's first column where it has none of its own. */
export function columnX({ columns }: PlacedBar, tick: Ticks): Units {
  return (columns.find((column) => column.tick === tick) ?? columns[0]!).x;
}
