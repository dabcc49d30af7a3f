import type { Chord } from '../harmony/chord.ts';
import { type ChordTextError, parseChordText } from '../harmony/chordText.ts';
import type { Key } from '../harmony/key.ts';
import { err, ok, type Result } from '../result.ts';
import { beatLengths, type Meter, type MeterError, parseMeter, sameMeter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { BarText, ChartLengthError, ChartPlace } from './chartText.ts';
import type { ChordSlot } from './song.ts';

/**
 * Why a text is no chart, with the place of the token (or of the bar) that is at fault.
 * `beats-do-not-fit`: the bar has so many tokens and so many felt beats; the place is the first
 * token too many, or the bar. `error.at` of an unknown chord counts within the token.
 */
export type ChartError =
  | { readonly kind: 'empty-chart' }
  | ChartLengthError
  | (ChartPlace &
      (
        | { readonly kind: 'empty-bar' }
        | { readonly kind: 'beats-do-not-fit'; readonly tokens: number; readonly beats: number }
        | { readonly kind: 'nothing-to-hold' }
        | { readonly kind: 'nothing-to-repeat' }
        | { readonly kind: 'repeat-with-chords' }
        | { readonly kind: 'repeat-of-other-meter' }
        | { readonly kind: 'bad-meter'; readonly error: MeterError }
        | { readonly kind: 'unknown-chord'; readonly error: ChordTextError }
      ));

/** Reads one chord's text in the key of a chart, where it has one. */
export type ChordReading = (text: string) => Result<Chord, ChordTextError>;

/** What a chart is read in: its meter and, where numerals and numbers are chords, its key. */
export type ChartSetting = {
  readonly meter: Meter;
  readonly key: Key | undefined;
  readonly chordOf: ChordReading;
};

/** `parseChordText` in a key; each text is read once, however often a chart has it. */
export function chordReading(key: Key | undefined): ChordReading {
  const read = new Map<string, Result<Chord, ChordTextError>>();
  return (text) => {
    const known = read.get(text) ?? parseChordText(text, key);
    read.set(text, known);
    return known;
  };
}

/** One chord as it sounds in a bar; `held` goes on from the bar before. */
type BarChord = {
  readonly chord: ChordSlot['chord'];
  readonly ticks: Ticks;
  readonly held: boolean;
};

/** A bar that was read: its meter and what sounds in it. */
export type ChartBar = { readonly meter: Meter; readonly chords: readonly BarChord[] };

/** The token for a beat on which the chord before goes on. */
export const HOLD = '/';

const REPEAT = '%';
const NO_CHORD = /^N\.?C\.?$/i;

const METER_TOKEN = /^\d[\d+]*\/\d+(?:\(.*\))?$/;

/** Whether a token at the start of a bar is taken for the bar's own meter. */
export function readsAsMeter(token: string): boolean {
  return METER_TOKEN.test(token) && parseMeter(token).ok;
}

/**
 * The bar's own meter, where it begins with one, and the tokens after it. Where numbers are chords,
 * `5/7` is one, and so is `5/4` alone in its bar.
 */
function readMeter(
  tokens: readonly ChartPlace[],
  { meter, key, chordOf }: ChartSetting,
): Result<{ readonly meter: Meter; readonly tokens: readonly ChartPlace[] }, ChartError> {
  const first = tokens[0];
  const mayBeChord = first && key && chordOf(first.text).ok;
  const isChord = mayBeChord && (tokens.length === 1 || !readsAsMeter(first.text));
  if (!first || isChord || !METER_TOKEN.test(first.text)) return ok({ meter, tokens });
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

function readChord(
  token: ChartPlace,
  chordOf: ChordReading,
): Result<ChordSlot['chord'], ChartError> {
  if (NO_CHORD.test(token.text)) return ok('no-chord');
  const chord = chordOf(token.text);
  return chord.ok ? chord : err({ ...token, kind: 'unknown-chord', error: chord.error });
}

function readChords(
  tokens: readonly ChartPlace[],
  lengths: readonly Ticks[],
  before: BarChord | undefined,
  chordOf: ChordReading,
): Result<BarChord[], ChartError> {
  const chords: BarChord[] = [];
  for (const [i, token] of tokens.entries()) {
    const ticks = lengths[i] ?? 0;
    const last = chords.at(-1);
    if (token.text !== HOLD) {
      const chord = readChord(token, chordOf);
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
  before: ChartBar | undefined,
): Result<ChartBar, ChartError> {
  if (!before) return err({ ...token, kind: 'nothing-to-repeat' });
  if (!sameMeter(before.meter, meter)) return err({ ...token, kind: 'repeat-of-other-meter' });
  return ok({ meter, chords: before.chords.map((chord) => ({ ...chord, held: false })) });
}

/** Reads one bar after the bar before it; the grammar is that of `parseChartBars`. */
export function readBar(
  bar: BarText,
  setting: ChartSetting,
  before: ChartBar | undefined,
): Result<ChartBar, ChartError> {
  const read = readMeter(bar.tokens, setting);
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
  const chords = readChords(tokens, lengths, before?.chords.at(-1), setting.chordOf);
  return chords.ok ? ok({ meter, chords: chords.value }) : chords;
}
