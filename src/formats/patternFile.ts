import { ok, type Result } from '../core/result.ts';
import type { Division, Ending, Hit, Pattern } from '../core/rhythm/pattern.ts';
import type { ShelfPattern } from '../core/rhythm/shelf.ts';
import type { Source } from '../core/rhythm/sources.ts';
import { STRAIGHT } from '../core/rhythm/swing.ts';
import { BASS_TONES, VOICE_TONES } from '../core/rhythm/tones.ts';
import { barTicks, beatStarts, formatMeter, type Meter, parseMeter } from '../core/time/meter.ts';
import type { Ticks } from '../core/time/ticks.ts';
import {
  type Expected,
  formatHit,
  formatStroke,
  parseHit,
  parseStroke,
  type Written,
} from './patternEvents.ts';
import {
  PATTERN_FILE_VERSION,
  type PatternFile,
  type Read,
  readShape,
  wrong,
} from './patternFileShape.ts';

export type { PatternFileError } from './patternFileShape.ts';

/**
 * Reads a pattern file, as text or as the JSON it holds. What only a shelf needs (origin, use,
 * tempo, tags) may be there or not and is left out of the pattern. The pattern fits its meter: as
 * many bars for both hands and every source, hits and strokes ascending inside their bars. Sources
 * without an id or a name take their part's name for it.
 */
export function decodePattern(json: unknown): Read<Pattern> {
  const file = readShape(json);
  return file.ok ? patternOf(file.value) : file;
}

/** Reads a pattern file that must also say where its figure comes from, what it is used for, its tempo range and tags. */
export function decodeShelfPattern(json: unknown): Read<ShelfPattern> {
  const file = readShape(json);
  if (!file.ok) return file;
  const { name, origin, use, tempo, tags } = file.value;
  if (name === '') return wrong('name', nothingThere('a name'));
  if (origin === undefined) return wrong('origin', nothingThere('common practice, or a text'));
  if (use === undefined) return wrong('use', nothingThere('one line on where it is used'));
  if (!tags) return wrong('tags', nothingThere('words to find it by'));
  if (!tempo) return wrong('tempo', nothingThere('the slowest and the fastest usual tempo'));
  if (tempo[0] > tempo[1])
    return wrong('tempo', { expected: 'the slower tempo first', found: tempo.join(', ') });
  const pattern = patternOf(file.value);
  return pattern.ok
    ? ok({ pattern: pattern.value, origin, use, tempoRange: tempo, tags })
    : pattern;
}

function nothingThere(expected: string): Expected {
  return { expected, found: 'nothing' };
}

function patternOf(file: PatternFile): Read<Pattern> {
  const meter = parseMeter(file.meter);
  if (!meter.ok)
    return wrong('meter', { expected: 'a meter such as 4/4 or 7/8 (2+2+3)', found: file.meter });
  const bars = file.left.length;
  const divisions = divisionsOf(file.divisions, meter.value, bars, 'divisions');
  if (!divisions.ok) return divisions;
  if (file.right.length !== bars) return wrong('right', asManyBars(bars, file.right.length));
  const left = eventsOf(file.left, meter.value, (bar) => `left[${bar}]`, leftHit);
  if (!left.ok) return left;
  const right = eventsOf(file.right, meter.value, (bar) => `right[${bar}]`, rightHit);
  if (!right.ok) return right;
  const sources = sourcesOf(file, meter.value, bars);
  if (!sources.ok) return sources;
  const ending = file.ending && endingOf(file.ending, meter.value);
  if (ending && !ending.ok) return ending;
  return ok({
    id: file.id,
    name: file.name,
    meter: meter.value,
    bars,
    divisions: divisions.value,
    swing: file.swing ?? STRAIGHT,
    sources: sources.value,
    left: left.value,
    right: right.value,
    ...(ending ? { ending: ending.value } : {}),
    ...(file.pedal ? { pedal: file.pedal } : {}),
  });
}

const leftHit = (text: string, meter: Meter) => parseHit(text, meter, BASS_TONES);
const rightHit = (text: string, meter: Meter) => parseHit(text, meter, VOICE_TONES);

function divisionsOf(
  divisions: PatternFile['divisions'],
  meter: Meter,
  bars: number,
  path: string,
): Read<readonly Division[]> {
  const beats = bars * beatStarts(meter).length;
  if (typeof divisions === 'number') return ok(Array.from({ length: beats }, () => divisions));
  return divisions.length === beats
    ? ok(divisions)
    : wrong(path, {
        expected: `one division, or one for each of the ${beats} beats`,
        found: `${divisions.length}`,
      });
}

function asManyBars(wanted: number, found: number): Expected {
  return { expected: `${wanted} bars, as many as left has`, found: `${found}` };
}

function endingOf(ending: NonNullable<PatternFile['ending']>, meter: Meter): Read<Ending> {
  const divisions = ending.divisions
    ? divisionsOf(ending.divisions, meter, 1, 'ending.divisions')
    : ok(undefined);
  if (!divisions.ok) return divisions;
  const left = eventsOf([ending.left], meter, () => 'ending.left', leftHit);
  if (!left.ok) return left;
  const right = eventsOf([ending.right], meter, () => 'ending.right', rightHit);
  if (!right.ok) return right;
  const hands = { left: left.value, right: right.value };
  return ok(divisions.value ? { ...hands, divisions: divisions.value } : hands);
}

function sourcesOf(file: PatternFile, meter: Meter, bars: number): Read<Source[]> {
  const sources: Source[] = [];
  for (const [i, { id, name, part, strokes }] of (file.sources ?? []).entries()) {
    const path = `sources[${i}].strokes`;
    if (strokes.length !== bars) return wrong(path, asManyBars(bars, strokes.length));
    const read = eventsOf(strokes, meter, (bar) => `${path}[${bar}]`, parseStroke);
    if (!read.ok) return read;
    const nth = sources.filter((source) => source.part === part).length + 1;
    const usualId = nth === 1 ? part : `${part} ${nth}`;
    sources.push({ id: id ?? usualId, name: name ?? part, part, strokes: read.value });
  }
  return ok(sources);
}

type Timed = { readonly at: Ticks; readonly length: Ticks };

/** The events of all bars at their ticks in the pattern, each with its length; `pathOf` names a bar in errors. */
function eventsOf<E extends Timed>(
  bars: readonly string[],
  meter: Meter,
  pathOf: (bar: number) => string,
  parse: (text: string, meter: Meter) => Result<Written<E>, Expected>,
): Read<E[]> {
  const events: Written<E>[] = [];
  for (const [bar, line] of bars.entries())
    for (const text of line.split(',').filter((part) => part.trim() !== '')) {
      const event = parse(text, meter);
      if (!event.ok) return wrong(pathOf(bar), event.error);
      const at = bar * barTicks(meter) + event.value.at;
      const isLater = at > (events.at(-1)?.at ?? -1);
      if (!isLater) return wrong(pathOf(bar), { expected: 'counts in order', found: text.trim() });
      events.push({ ...event.value, at });
    }
  return ok(withLengths(events, bars.length * barTicks(meter)));
}

function withLengths<E extends Timed>(events: readonly Written<E>[], end: Ticks): E[] {
  return events.map(
    (event, i) =>
      ({ ...event, length: event.length ?? (events[i + 1]?.at ?? end) - event.at }) as E,
  );
}

/**
 * A pattern as a file's text, indented, every length written out; `decodePattern` gives the same
 * pattern back. All its hits and strokes lie inside its bars.
 */
export function encodePattern(pattern: Pattern): string {
  return formatFile({ head: {}, pattern });
}

/** A pattern of the shelf as a file's text; `decodeShelfPattern` gives the same back. */
export function encodeShelfPattern({
  pattern,
  origin,
  use,
  tempoRange,
  tags,
}: ShelfPattern): string {
  return formatFile({ head: { origin, use, tempo: tempoRange, tags }, pattern });
}

function formatFile({ head, pattern }: { head: object; pattern: Pattern }): string {
  const { id, name, meter, swing, divisions, bars, ending } = pattern;
  const isStraight = swing.level === STRAIGHT.level && swing.ratio === STRAIGHT.ratio;
  const hand = (hits: readonly Hit[], count: number) => linesOf(hits, count, meter, formatHit);
  const file = {
    version: PATTERN_FILE_VERSION,
    id,
    name,
    ...head,
    meter: formatMeter(meter),
    divisions: shortDivisions(divisions),
    ...(isStraight ? {} : { swing }),
    ...(pattern.pedal ? { pedal: pattern.pedal } : {}),
    left: hand(pattern.left, bars),
    right: hand(pattern.right, bars),
    ...(ending
      ? {
          ending: {
            ...(ending.divisions ? { divisions: shortDivisions(ending.divisions) } : {}),
            left: hand(ending.left, 1)[0],
            right: hand(ending.right, 1)[0],
          },
        }
      : {}),
    sources: pattern.sources.map(({ strokes, ...source }) => ({
      ...source,
      strokes: linesOf(strokes, bars, meter, formatStroke),
    })),
  };
  return `${JSON.stringify(file, undefined, 2)}\n`;
}

/** One number where all beats are divided alike. */
function shortDivisions(divisions: readonly Division[]): Division | readonly Division[] {
  const [first] = divisions;
  return first !== undefined && divisions.every((d) => d === first) ? first : divisions;
}

/** One line of text for each of so many bars. */
function linesOf<E extends Timed>(
  events: readonly E[],
  bars: number,
  meter: Meter,
  format: (event: E, meter: Meter) => string,
): string[] {
  const bar = barTicks(meter);
  return Array.from({ length: bars }, (_, i) =>
    events
      .filter(({ at }) => Math.floor(at / bar) === i)
      .map((event) => format({ ...event, at: event.at - i * bar }, meter))
      .join(', '),
  );
}
