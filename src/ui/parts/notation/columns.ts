import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import type { SheetChord } from '../../../core/rhythm/sheet.ts';
import { barTicks } from '../../../core/time/meter.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import {
  ACCIDENTALS,
  DOT_WIDTH,
  flagWidth,
  GHOST_BRACKET,
  headWidth,
  REST_REACH,
  type Units,
} from './glyphs.ts';
import { textWidth } from './lettering.ts';
import type { Notation } from './notation.ts';
import { type SheetCount, sheetCounts } from './sheetCounts.ts';
import { lowerVoiceShift } from './voiceShift.ts';
import type { EngravedBar, NoteHead, WrittenEvent } from './writtenBars.ts';

/**
 * All that stands at one tick of a bar. A column's place is the left edge of its note heads; `left`
 * and `right` are how far its ink reaches from there to either side.
 */
export type Column = {
  readonly tick: Ticks;
  readonly left: Units;
  readonly right: Units;
  readonly count?: SheetCount;
  readonly chord?: { readonly text: string; readonly width: Units };
};

/** The chord symbol as it is written over the staff. */
export function chordText({ chord }: SheetChord): string {
  return chord === 'no-chord' ? 'N.C.' : formatChordSymbol(chord);
}

/** The columns of a bar in order: where an event starts, a chord changes or a count is spoken. Rests of a whole bar need none. */
export function barColumns(written: EngravedBar, kind: Notation['kind']): Column[] {
  const { bar, staves } = written;
  const events = [...staves.right, ...staves.left].flat().filter(({ event }) => !event.isBarRest);
  const counts = kind === 'in-time' ? sheetCounts(bar) : [];
  const ticks = new Set([
    bar.startTick,
    ...events.map(({ event }) => event.startTick),
    ...bar.chords.map(({ startTick }) => startTick),
    ...counts.map(({ tick }) => tick),
  ]);
  return [...ticks]
    .toSorted((a, b) => a - b)
    .map((tick) => {
      const here = events.filter(({ event }) => event.startTick === tick);
      const shift = voiceShiftAt(written, tick);
      const count = counts.find((other) => other.tick === tick);
      const chord = bar.chords.find(({ startTick }) => startTick === tick);
      return {
        tick,
        left: Math.max(0, ...here.map(leftReach)),
        right: Math.max(0, ...here.map(rightReach)) + shift,
        ...(count && { count }),
        ...(chord && { chord: { text: chordText(chord), width: chordWidth(chord) } }),
      };
    });
}

/** How far notes of a lower voice move to the right at a tick, on either staff. */
function voiceShiftAt({ staves }: EngravedBar, tick: Ticks): Units {
  const shifts = [staves.right, staves.left].map((voices) => {
    const [upper, lower] = voices.map((voice) =>
      voice.find(({ event }) => event.startTick === tick),
    );
    return upper && lower ? lowerVoiceShift(upper, lower) : 0;
  });
  return Math.max(...shifts);
}

function chordWidth(chord: SheetChord): Units {
  return textWidth(chordText(chord), 'chord');
}

/** The bar's end on the timeline. */
export function barEndTick({ bar }: EngravedBar): Ticks {
  return bar.startTick + barTicks(bar.meter);
}

function leftReach({ heads, event, stem }: WrittenEvent): Units {
  const displaced = stem === 'down' && hasSeconds(heads) ? headWidth(event.written.value) : 0;
  const ghost = event.articulations.includes('ghost') ? GHOST_BRACKET : 0;
  return displaced + ghost + signsWidth(heads);
}

function rightReach({ heads, event, stem }: WrittenEvent): Units {
  const { value, dots } = event.written;
  const dotted = dots * DOT_WIDTH + (event.notes.some((note) => note.tiedToNext) ? TIE_ROOM : 0);
  if (heads.length === 0) return REST_REACH[value].width + dotted;
  const displaced = stem === 'up' && hasSeconds(heads) ? headWidth(value) : 0;
  const flag = stem === 'up' && event.beam === undefined ? flagWidth(value) : 0;
  const ghost = event.articulations.includes('ghost') ? GHOST_BRACKET : 0;
  return headWidth(value) + Math.max(displaced, flag) + dotted + ghost;
}

/** A tie to the next note needs some length to be seen. */
const TIE_ROOM: Units = 9;

function hasSeconds(heads: readonly NoteHead[]): boolean {
  return heads.some(({ place }, i) => i > 0 && place - heads[i - 1]!.place < 2);
}

/** Half spaces from one accidental down to the next that may stand straight under it. */
const CLEAR_SIGNS = 6;

/** Width of a chord's accidentals: as many columns as stand closer together than is clear. */
function signsWidth(heads: readonly NoteHead[]): Units {
  const signs = heads.filter(({ sign }) => sign !== undefined);
  const columns: { lowest: number; width: Units }[] = [];
  for (const { place, sign } of signs.toReversed()) {
    const { width } = ACCIDENTALS[sign!]!;
    const free = columns.find(({ lowest }) => lowest - place >= CLEAR_SIGNS);
    if (free) Object.assign(free, { lowest: place, width: Math.max(free.width, width) });
    else columns.push({ lowest: place, width });
  }
  return columns.reduce((sum, { width }) => sum + width + 3, 0);
}
