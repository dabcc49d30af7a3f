import type { Chord } from '../harmony/chord.ts';
import {
  type ChordSymbolError,
  formatChordSymbol,
  parseChordSymbol,
} from '../harmony/chordSymbol.ts';
import { err, ok, type Result } from '../result.ts';
import {
  beatLengths,
  beatStarts,
  formatMeter,
  type Meter,
  type MeterError,
  parseMeter,
  sameMeter,
} from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import { type BarText, barTexts, type ChartPlace } from './chartText.ts';
import { sectionBars } from './form.ts';
import type { BarMeter, ChordSlot } from './song.ts';

/** Chords end to end and the bars that have a meter of their own, as a section holds them. */
export type Chart = {
  readonly slots: readonly ChordSlot[];
  readonly barMeters: readonly BarMeter[];
};

/**
 * Why a text is no chart, with the place of the token (or of the bar) that is at fault.
 * `beats-do-not-fit`: the bar has so many tokens and so many felt beats; the place is the first
 * token too many, or the bar. `error.at` of an unknown chord counts within the token.
 */
export type ChartError =
  | { readonly kind: 'empty-chart' }
  | (ChartPlace &
      (
        | { readonly kind: 'empty-bar' }
        | { readonly kind: 'beats-do-not-fit'; readonly tokens: number; readonly beats: number }
        | { readonly kind: 'nothing-to-hold' }
        | { readonly kind: 'nothing-to-repeat' }
        | { readonly kind: 'repeat-with-chords' }
        | { readonly kind: 'repeat-of-other-meter' }
        | { readonly kind: 'bad-meter'; readonly error: MeterError }
        | { readonly kind: 'unknown-chord'; readonly error: ChordSymbolError }
      ));

/** What sounds in one bar, in order; `held` goes on from the bar before. */
type BarChord = {
  readonly chord: ChordSlot['chord'];
  readonly ticks: Ticks;
  readonly held: boolean;
};

type Bar = { readonly meter: Meter; readonly chords: readonly BarChord[] };

const HOLD = '/';
const REPEAT = '%';
const NO_CHORD = /^N\.?C\.?$/i;
const METER_TOKEN = /^\d[\d+]*\/\d+(?:\(.*\))?$/;

/** The bar's own meter, where it begins with one, and the tokens after it. */
function readMeter(
  tokens: readonly ChartPlace[],
  meter: Meter,
): Result<{ readonly meter: Meter; readonly tokens: readonly ChartPlace[] }, ChartError> {
  const first = tokens[0];
  if (!first || !METER_TOKEN.test(first.text)) return ok({ meter, tokens });
  const own = parseMeter(first.text);
  return own.ok
    ? ok({ meter: own.value, tokens: tokens.slice(1) })
    : err({ ...first, kind: 'bad-meter', error: own.error });
}

/** How long each of a bar's tokens lasts; undefined where they do not fit its felt beats. */
function tokenLengths(tokens: readonly ChartPlace[], meter: Meter): Ticks[] | undefined {
  const beats = beatLengths(meter);
  const share = beats.length / tokens.length;
  const mayShare = tokens.length === 1 || tokens.every((token) => token.text !== HOLD);
  if (!Number.isInteger(share) || (share > 1 && !mayShare)) return undefined;
  return tokens.map((_, i) =>
    beats.slice(i * share, (i + 1) * share).reduce((total, beat) => total + beat, 0),
  );
}

function readChord(token: ChartPlace): Result<ChordSlot['chord'], ChartError> {
  if (NO_CHORD.test(token.text)) return ok('no-chord');
  const chord = parseChordSymbol(token.text);
  return chord.ok ? chord : err({ ...token, kind: 'unknown-chord', error: chord.error });
}

function readChords(
  tokens: readonly ChartPlace[],
  lengths: readonly Ticks[],
  before: BarChord | undefined,
): Result<BarChord[], ChartError> {
  const chords: BarChord[] = [];
  for (const [i, token] of tokens.entries()) {
    const ticks = lengths[i] ?? 0;
    const last = chords.at(-1);
    if (token.text !== HOLD) {
      const chord = readChord(token);
      if (!chord.ok) return chord;
      chords.push({ chord: chord.value, ticks, held: false });
    } else if (last) chords[chords.length - 1] = { ...last, ticks: last.ticks + ticks };
    else if (before) chords.push({ chord: before.chord, ticks, held: true });
    else return err({ ...token, kind: 'nothing-to-hold' });
  }
  return ok(chords);
}

function repeatedBar(
  token: ChartPlace,
  meter: Meter,
  before: Bar | undefined,
): Result<Bar, ChartError> {
  if (!before) return err({ ...token, kind: 'nothing-to-repeat' });
  if (!sameMeter(before.meter, meter)) return err({ ...token, kind: 'repeat-of-other-meter' });
  return ok({ meter, chords: before.chords.map((chord) => ({ ...chord, held: false })) });
}

function readBar(
  bar: BarText,
  sectionMeter: Meter,
  before: Bar | undefined,
): Result<Bar, ChartError> {
  const read = readMeter(bar.tokens, sectionMeter);
  if (!read.ok) return read;
  const { meter, tokens } = read.value;
  if (tokens.length === 0) return err({ ...bar.place, kind: 'empty-bar' });
  const repeat = tokens.find((token) => token.text === REPEAT);
  if (repeat && tokens.length > 1) return err({ ...repeat, kind: 'repeat-with-chords' });
  if (repeat) return repeatedBar(repeat, meter, before);
  const lengths = tokenLengths(tokens, meter);
  if (!lengths) {
    const beats = beatLengths(meter).length;
    const place = tokens[beats] ?? { ...bar.place, ...tokens[0], text: bar.place.text.trim() };
    return err({ ...place, kind: 'beats-do-not-fit', tokens: tokens.length, beats });
  }
  const chords = readChords(tokens, lengths, before?.chords.at(-1));
  return chords.ok ? ok({ meter, chords: chords.value }) : chords;
}

function slotsOf(bars: readonly Bar[]): ChordSlot[] {
  const slots: ChordSlot[] = [];
  for (const { chord, ticks, held } of bars.flatMap((bar) => bar.chords)) {
    const last = slots.at(-1);
    if (held && last)
      slots[slots.length - 1] = { ...last, durationTicks: last.durationTicks + ticks };
    else slots.push({ chord, durationTicks: ticks });
  }
  return slots;
}

/**
 * Reads a chart in `meter`. Bars stand between bar lines (the outer ones may be left out; `||` and
 * line ends are bar lines too). In a bar stands one token for each felt beat: a chord symbol, or `/`
 * where the chord before goes on, also over the bar line; or a single token for the whole bar; or
 * chords without slashes that share the beats evenly (`| C G |`). `%` plays the bar before again,
 * `N.C.` is no chord. A bar may begin with a meter of its own, for that bar only (`2/4 G /`).
 * Every chord symbol is a change of its own, the same chord once more too.
 */
export function parseChartBars(text: string, meter: Meter): Result<Chart, ChartError> {
  const bars: Bar[] = [];
  for (const barText of barTexts(text)) {
    const bar = readBar(barText, meter, bars.at(-1));
    if (!bar.ok) return bar;
    bars.push(bar.value);
  }
  if (bars.length === 0) return err({ kind: 'empty-chart' });
  const barMeters = bars
    .map((bar, i) => ({ bar: i, meter: bar.meter }))
    .filter((bar) => !sameMeter(bar.meter, meter));
  return ok({ slots: slotsOf(bars), barMeters });
}

/** The chord slots of a chart: see `parseChartBars`, which also tells which bars have another meter. */
export function parseChart(text: string, meter: Meter): Result<readonly ChordSlot[], ChartError> {
  const chart = parseChartBars(text, meter);
  return chart.ok ? ok(chart.value.slots) : chart;
}

function formatSlotChord(chord: Chord | 'no-chord'): string {
  return chord === 'no-chord' ? 'N.C.' : formatChordSymbol(chord);
}

function formatBar(beats: readonly string[], meter: Meter, sectionMeter: Meter): string {
  const isWhole = beats.slice(1).every((beat) => beat === HOLD);
  const tokens = isWhole ? beats.slice(0, 1) : beats;
  const own = sameMeter(meter, sectionMeter) ? [] : [formatMeter(meter)];
  return [...own, ...tokens].join(' ');
}

/**
 * The chart as text on one line, `| C | F / G / | 2/4 G |`; `parseChartBars` reads it back to the
 * same slots. A chord that fills its bar stands alone, otherwise each beat has its token; a bar in
 * which nothing changes is `/`. No slots give an empty text. A change off the beat, or slots that
 * end inside a bar, cannot be written and throw.
 */
export function formatChartBars({ slots, barMeters }: Chart, meter: Meter): string {
  if (slots.length === 0) return '';
  let tick = 0;
  const changes = new Map(
    slots.map((slot) => {
      const start = tick;
      tick += slot.durationTicks;
      return [start, formatSlotChord(slot.chord)];
    }),
  );
  const beats = sectionBars({ name: 'chart', meter, barMeters, slots }).map((bar) => ({
    meter: bar.meter,
    tokens: beatStarts(bar.meter).map((beat) => changes.get(bar.startTick + beat) ?? HOLD),
  }));
  const written = beats.flatMap((bar) => bar.tokens).filter((token) => token !== HOLD).length;
  if (written !== slots.length) throw new Error('a chord of the chart does not change on a beat');
  return `| ${beats.map((bar) => formatBar(bar.tokens, bar.meter, meter)).join(' | ')} |`;
}

/** The chart of slots that all lie in bars of one meter: see `formatChartBars`. */
export function formatChart(slots: readonly ChordSlot[], meter: Meter): string {
  return formatChartBars({ slots, barMeters: [] }, meter);
}
