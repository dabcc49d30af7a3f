import {
  type Ending,
  type Hands,
  type Hit,
  type Pattern,
  patternBeats,
  patternTicks,
  TOUCHES,
} from '../../core/rhythm/pattern.ts';
import type { Source, Stroke, StrokeTone } from '../../core/rhythm/sources.ts';
import { BASS_TONES, VOICE_TONES } from '../../core/rhythm/tones.ts';
import { barTicks, type Meter } from '../../core/time/meter.ts';
import type { Ticks } from '../../core/time/ticks.ts';

/** Something that stands in a pattern for so long. */
type Placed = { readonly at: Ticks; readonly length: Ticks };

/** The order in which a hit or stroke lists its tones. */
const TONE_ORDER: readonly StrokeTone[] = [...BASS_TONES, ...VOICE_TONES, 'unpitched'];

/** Tones in the order of their table, each once. */
export function orderedTones<T extends StrokeTone>(tones: readonly T[]): T[] {
  return [...new Set(tones)].toSorted((a, b) => TONE_ORDER.indexOf(a) - TONE_ORDER.indexOf(b));
}

/**
 * Two hits of one step as one: the tones of both, the stronger touch, the longer length; held, or
 * anticipating, where either is.
 */
export function mergedHit<H extends Hit>(a: H, b: H): H {
  const [weaker, stronger] = TOUCHES.indexOf(a.touch) > TOUCHES.indexOf(b.touch) ? [b, a] : [a, b];
  return {
    ...weaker,
    ...stronger,
    length: Math.max(a.length, b.length),
    play: orderedTones([...a.play, ...b.play]),
    held: a.held || b.held,
    ...(a.anticipates || b.anticipates ? { anticipates: true } : {}),
  };
}

function mergedStroke(a: Stroke, b: Stroke): Stroke {
  return {
    at: a.at,
    length: Math.max(a.length, b.length),
    strength: Math.max(a.strength, b.strength),
    presence: Math.max(a.presence, b.presence),
    what: orderedTones([...a.what, ...b.what]),
  };
}

function onWholeTicks<T extends Placed>(item: T): T {
  // Adding 0 makes a rounded −0 a plain 0.
  const at = Math.round(item.at) + 0;
  const length = Math.max(Math.round(item.length), 1);
  const isWhole = Object.is(at, item.at) && length === item.length;
  return isWhole ? item : { ...item, at, length };
}

/**
 * Hits or strokes as a hand or source holds them: on whole ticks, ascending, those at one tick
 * merged, none longer than to the next one, the last (tied over the end) not longer than to `tiedTo`:
 * the first one of the next time round, if nothing else is said. What does not start within 0 … `end`
 * is cut off.
 */
function settled<T extends Placed>(
  placed: readonly T[],
  end: Ticks,
  merged: (a: T, b: T) => T,
  tiedTo?: Ticks,
): T[] {
  const inOrder = placed
    .map(onWholeTicks)
    .filter(({ at }) => at >= 0 && at < end)
    .toSorted((a, b) => a.at - b.at);
  const single: T[] = [];
  for (const next of inOrder) {
    const last = single.at(-1);
    if (last?.at === next.at) single[single.length - 1] = merged(last, next);
    else single.push(next);
  }
  const last = tiedTo ?? end + (single[0]?.at ?? 0);
  return single.map((item, i) => {
    const room = (single[i + 1]?.at ?? last) - item.at;
    return item.length > room ? { ...item, length: room } : item;
  });
}

/** Hits as a hand of a pattern of `end` ticks holds them: see `settled`. */
export function settledHits<H extends Hit>(hits: readonly H[], end: Ticks): H[] {
  return settled(hits, end, mergedHit);
}

/** Both hands of a pattern of `end` ticks: see `settled`. */
export function settledHands({ left, right }: Hands, end: Ticks): Hands {
  return { left: settledHits(left, end), right: settledHits(right, end) };
}

/** Hits of an ending of `bar` ticks: see `settled`. What comes after it is another section, so the last may be tied over a whole bar of that. */
export function settledEndingHits<H extends Hit>(hits: readonly H[], bar: Ticks): H[] {
  return settled(hits, bar, mergedHit, 2 * bar);
}

/** An ending as a pattern of a meter holds it: see `settledEndingHits`; one division to a beat, where it has its own. */
export function settledEnding(ending: Ending, meter: Meter): Ending {
  const bar = barTicks(meter);
  const { left, right, divisions } = ending;
  return {
    ...ending,
    left: settledEndingHits(left, bar),
    right: settledEndingHits(right, bar),
    ...(divisions
      ? { divisions: patternBeats({ meter, bars: 1, divisions }).map((beat) => beat.division) }
      : {}),
  };
}

/** Sources with their strokes as a pattern of `end` ticks holds them: see `settled`. */
export function settledSources(sources: readonly Source[], end: Ticks): Source[] {
  return sources.map((source) => ({
    ...source,
    strokes: settled(source.strokes, end, mergedStroke),
  }));
}

/** A pattern from anywhere as a project holds it: hands, ending and sources settled, one division to a beat. */
export function settledPattern(pattern: Pattern): Pattern {
  const end = patternTicks(pattern);
  const { ending } = pattern;
  return {
    ...pattern,
    divisions: patternBeats(pattern).map((beat) => beat.division),
    sources: settledSources(pattern.sources, end),
    ...settledHands(pattern, end),
    ...(ending ? { ending: settledEnding(ending, pattern.meter) } : {}),
  };
}
