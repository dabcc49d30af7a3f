import { type ChordTextError, parseChordText } from '../../../core/harmony/chordText.ts';
import type { Key } from '../../../core/harmony/key.ts';
import { ok, type Result } from '../../../core/result.ts';
import { type Chart, parseChartBars } from '../../../core/song/chart.ts';
import type { ChartError } from '../../../core/song/chartBar.ts';
import type { ChordSlot } from '../../../core/song/song.ts';
import type { Meter } from '../../../core/time/meter.ts';

/** What was typed or pasted into one cell of the chart. */
export type CellEntry =
  | { readonly kind: 'chord'; readonly chord: ChordSlot['chord'] }
  /** Nothing, or a slash: the chord before goes on. */
  | { readonly kind: 'go-on' }
  /** Whole bars, to be written from this bar on. */
  | { readonly kind: 'bars'; readonly chart: Chart };

const GO_ON = /^\/?$/;
const NO_CHORD = /^N\.?C\.?$/i;

/** A symbol whose root was typed small (`am7`) with its capital. */
function withCapital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function readChord(text: string, key: Key): Result<ChordSlot['chord'], ChordTextError> {
  if (NO_CHORD.test(text)) return ok('no-chord');
  const asTyped = parseChordText(text, key);
  if (asTyped.ok) return asTyped;
  const capital = parseChordText(withCapital(text), key);
  return capital.ok ? capital : asTyped;
}

/**
 * Reads a cell: a chord as symbol, numeral or number (a root may be typed small), N.C., nothing or
 * `/`; or, where there are several signs or a bar line, bars of a chart in the section's meter.
 */
export function readCellText(
  text: string,
  meter: Meter,
  key: Key,
): Result<CellEntry, ChordTextError | ChartError> {
  const typed = text.trim();
  if (GO_ON.test(typed)) return ok({ kind: 'go-on' });
  if (/[|\s%]/.test(typed)) {
    const chart = parseChartBars(typed, meter, key);
    return chart.ok ? ok({ kind: 'bars', chart: chart.value }) : chart;
  }
  const chord = readChord(typed, key);
  return chord.ok ? ok({ kind: 'chord', chord: chord.value }) : chord;
}
