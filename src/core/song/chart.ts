import type { Chord } from '../harmony/chord.ts';
import { formatChordSymbol } from '../harmony/chordSymbol.ts';
import type { Key } from '../harmony/key.ts';
import { err, ok, type Result } from '../result.ts';
import { beatStarts, formatMeter, type Meter, sameMeter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import {
  type ChartBar,
  type ChartError,
  chordReading,
  HOLD,
  readBar,
  readsAsMeter,
} from './chartBar.ts';
import { barTexts } from './chartText.ts';
import { sectionBars } from './form.ts';
import type { BarMeter, ChordSlot } from './song.ts';

/** Chords end to end and the bars that have a meter of their own, as a section holds them. */
export type Chart = {
  readonly slots: readonly ChordSlot[];
  readonly barMeters: readonly BarMeter[];
};

function slotsOf(bars: readonly ChartBar[]): ChordSlot[] {
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
 * Every chord is a change of its own, the same chord once more too. With a key, chords may also be
 * Roman numerals and scale-degree numbers in any mixture (`| 1 | IV G7 |`); a number over a bass that
 * reads as a meter (`5/4`) is one at the start of a bar with more in it: name the meter first there.
 */
export function parseChartBars(text: string, meter: Meter, key?: Key): Result<Chart, ChartError> {
  const texts = barTexts(text);
  if (!texts.ok) return texts;
  const setting = { meter, key, chordOf: chordReading(key) };
  const bars: ChartBar[] = [];
  for (const barText of texts.value) {
    const bar = readBar(barText, setting, bars.at(-1));
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
export function parseChart(
  text: string,
  meter: Meter,
  key?: Key,
): Result<readonly ChordSlot[], ChartError> {
  const chart = parseChartBars(text, meter, key);
  return chart.ok ? ok(chart.value.slots) : chart;
}

/** Names a chord in a chart's text, so that reading the text gives the chord again. */
export type ChordNaming = (chord: Chord) => string;

/** A first token that reads as a meter is kept from being one by naming the bar's meter before it. */
function formatBar(beats: readonly string[], meter: Meter, sectionMeter: Meter): string {
  const isWhole = beats.slice(1).every((beat) => beat === HOLD);
  const tokens = isWhole ? beats.slice(0, 1) : beats;
  const isOwn =
    !sameMeter(meter, sectionMeter) || (tokens.length > 1 && readsAsMeter(tokens[0] ?? ''));
  return (isOwn ? [formatMeter(meter), ...tokens] : tokens).join(' ');
}

function changesOf(slots: readonly ChordSlot[], nameOf: ChordNaming): Map<Ticks, string> {
  let tick = 0;
  return new Map(
    slots.map(({ chord, durationTicks }) => {
      const start = tick;
      tick += durationTicks;
      return [start, chord === 'no-chord' ? 'N.C.' : nameOf(chord)];
    }),
  );
}

/**
 * The chart as text on one line, `| C | F / G / | 2/4 G |`; `parseChartBars` reads it back to the
 * same slots. A chord that fills its bar stands alone, otherwise each beat has its token; a bar in
 * which nothing changes is `/`. Chords are named by symbol unless `nameOf` names them otherwise. No
 * slots give an empty text. A change off the beat, or slots that end inside a bar, cannot be written
 * and throw.
 */
export function formatChartBars(
  { slots, barMeters }: Chart,
  meter: Meter,
  nameOf: ChordNaming = formatChordSymbol,
): string {
  if (slots.length === 0) return '';
  const changes = changesOf(slots, nameOf);
  const bars = sectionBars({ name: 'chart', meter, barMeters, slots }).map((bar) => ({
    meter: bar.meter,
    tokens: beatStarts(bar.meter).map((beat) => changes.get(bar.startTick + beat) ?? HOLD),
  }));
  const written = bars.flatMap((bar) => bar.tokens).filter((token) => token !== HOLD).length;
  if (written !== slots.length) throw new Error('a chord of the chart does not change on a beat');
  return `| ${bars.map((bar) => formatBar(bar.tokens, bar.meter, meter)).join(' | ')} |`;
}

/** The chart of slots that all lie in bars of one meter: see `formatChartBars`. */
export function formatChart(
  slots: readonly ChordSlot[],
  meter: Meter,
  nameOf: ChordNaming = formatChordSymbol,
): string {
  return formatChartBars({ slots, barMeters: [] }, meter, nameOf);
}
