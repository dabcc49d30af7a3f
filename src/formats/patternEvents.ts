import { err, ok, type Result } from '../core/result.ts';
import { type Hit, TOUCHES, type Touch } from '../core/rhythm/pattern.ts';
import type { Stroke, StrokeTone } from '../core/rhythm/sources.ts';
import { BASS_TONES, type BassTone, VOICE_TONES, type VoiceTone } from '../core/rhythm/tones.ts';
import type { Meter } from '../core/time/meter.ts';
import { TICKS_PER_WHOLE, type Ticks } from '../core/time/ticks.ts';
import { formatFraction, formatPosition, parsePosition } from './patternPositions.ts';

/** What a place of a pattern file should have held. */
export type Expected = { readonly expected: string; readonly found: string };

/** An event of a bar as it is written; without a length it lasts until the next one. */
export type Written<E extends { readonly length: Ticks }> = Omit<E, 'length'> & {
  readonly length?: Ticks;
};

const STROKE_TONES: readonly StrokeTone[] = [...BASS_TONES, ...VOICE_TONES, 'unpitched'];

/** How strong a stroke is that is written with a touch. */
export const STROKE_STRENGTH: Readonly<Record<Touch, number>> = {
  ghost: 0.35,
  plain: 0.7,
  accent: 1,
};

/** Reads a note value as a share of a whole note: `1/4` is 480 ticks. */
function parseLength(word: string): Ticks | undefined {
  const match = /^(\d+)\/(\d+)$/.exec(word);
  const ticks = match ? (TICKS_PER_WHOLE * Number(match[1])) / Number(match[2]) : 0;
  return ticks > 0 && Number.isInteger(ticks) ? ticks : undefined;
}

function formatLength(ticks: Ticks): string {
  return formatFraction(ticks, TICKS_PER_WHOLE);
}

function parseTones<Tone extends string>(
  word: string,
  tones: readonly Tone[],
): readonly Tone[] | undefined {
  const found = word.split('+').map((name) => tones.find((tone) => tone === name));
  return found.every((tone) => tone !== undefined) ? found : undefined;
}

function parseShare(word: string, name: string): number | undefined {
  const value = word.startsWith(`${name}=`) ? Number(word.slice(name.length + 1)) : Number.NaN;
  return value >= 0 && value <= 1 ? value : undefined;
}

/**
 * Reads the words after the count, each of which `read` turns into one field of an event or does
 * not know; a field may be given once. `expected` says which words there are.
 */
function readWords<Fields extends object>(
  text: string,
  meter: Meter,
  read: (word: string) => Fields | undefined,
  expected: string,
): Result<{ readonly at: Ticks; readonly fields: Fields }, Expected> {
  const [position = '', ...words] = text.trim().split(/\s+/);
  const at = parsePosition(position, meter);
  if (at === undefined)
    return err({ expected: 'a count of the bar such as 1, 2& or 3+1/6', found: position });
  let fields: Partial<Fields> = {};
  for (const word of words) {
    const field = read(word);
    if (!field) return err({ expected, found: word });
    const twice = Object.keys(field).some((name) => name in fields);
    if (twice) return err({ expected: 'everything once', found: word });
    fields = { ...fields, ...field };
  }
  return ok({ at, fields: fields as Fields });
}

function readHitWord<Tone extends string>(word: string, tones: readonly Tone[]) {
  const play = parseTones(word, tones);
  if (play) return { play };
  const length = parseLength(word);
  if (length) return { length };
  const touch = TOUCHES.find((name) => name === word);
  if (touch) return { touch };
  if (word === 'short') return { held: false };
  return word === 'anticipates' ? { anticipates: true } : undefined;
}

/**
 * Reads a hit: the count it stands on, what it plays, and as far as they are not usual its length
 * as a share of a whole note, its touch, `short`, `anticipates`: `4& root+fifth 1/8 accent short`.
 * `at` counts from the bar's downbeat.
 */
export function parseHit<Tone extends BassTone | VoiceTone>(
  text: string,
  meter: Meter,
  tones: readonly Tone[],
): Result<Written<Hit<Tone>>, Expected> {
  const words = readWords<Partial<Hit<Tone>>>(
    text,
    meter,
    (word) => readHitWord(word, tones),
    `a tone (${tones.join(', ')}), a length such as 1/8, ghost, accent, short or anticipates`,
  );
  if (!words.ok) return words;
  const { at, fields } = words.value;
  const { play } = fields;
  if (!play) return err({ expected: `what it plays: ${tones.join(', ')}`, found: text });
  return ok({ touch: 'plain', held: true, ...fields, at, play });
}

/** A hit as `parseHit` reads it, its length always written. `at` counts from the bar's downbeat. */
export function formatHit(hit: Hit, meter: Meter): string {
  return [
    formatPosition(hit.at, meter),
    hit.play.join('+'),
    formatLength(hit.length),
    ...(hit.touch === 'plain' ? [] : [hit.touch]),
    ...(hit.held ? [] : ['short']),
    ...(hit.anticipates ? ['anticipates'] : []),
  ].join(' ');
}

/**
 * Reads a stroke: its count, and as far as they are not usual what it sounds, its length, its
 * strength as a touch or as `strength=0.8`, and `presence=0.5`: `2& fifth 1/8 ghost`.
 */
export function parseStroke(text: string, meter: Meter): Result<Written<Stroke>, Expected> {
  const words = readWords<Partial<Stroke>>(
    text,
    meter,
    readStrokeWord,
    'a tone, a length such as 1/8, ghost, accent, strength=0.8 or presence=0.5',
  );
  if (!words.ok) return words;
  const { at, fields } = words.value;
  const usual = { strength: STROKE_STRENGTH.plain, presence: 1, what: ['unpitched'] } as const;
  return ok({ ...usual, ...fields, at });
}

function readStrokeWord(word: string): Partial<Stroke> | undefined {
  const what = parseTones(word, STROKE_TONES);
  if (what) return { what };
  const length = parseLength(word);
  if (length) return { length };
  const touch = TOUCHES.find((name) => name === word);
  const strength = touch ? STROKE_STRENGTH[touch] : parseShare(word, 'strength');
  if (strength !== undefined) return { strength };
  const presence = parseShare(word, 'presence');
  return presence === undefined ? undefined : { presence };
}

/** A stroke as `parseStroke` reads it, its length always written. */
export function formatStroke(stroke: Stroke, meter: Meter): string {
  const touch = TOUCHES.find((name) => STROKE_STRENGTH[name] === stroke.strength);
  return [
    formatPosition(stroke.at, meter),
    ...(stroke.what.join() === 'unpitched' ? [] : [stroke.what.join('+')]),
    formatLength(stroke.length),
    ...(touch === 'plain' ? [] : [touch ?? `strength=${stroke.strength}`]),
    ...(stroke.presence === 1 ? [] : [`presence=${stroke.presence}`]),
  ].join(' ');
}
