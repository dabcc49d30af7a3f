import { barAt, chordAt, type Timeline } from '../song/timeline.ts';
import { beatLengths } from '../time/meter.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import type { Note } from './note.ts';
import { type Hit, type Pattern, patternTicks } from './pattern.ts';
import type { PatternAt } from './patternAt.ts';

/** The sustaining pedal is pressed at `downTick` and let up at `upTick`, later. */
export type PedalSpan = { readonly downTick: Ticks; readonly upTick: Ticks };

/**
 * The pedal goes down so long after the keys: up with the new chord, down once the old one is
 * damped (syncopated or legato pedalling: docs/sources.md#pedalling). Notes shorter than that are not caught.
 */
export const PEDAL_LAG: Ticks = TICKS_PER_QUARTER / 8;

/** From `tick` on the pedal is used or not; where it was down, it is let up there. */
type Change = { readonly tick: Ticks; readonly isUsed: boolean };

/** The hands' notes, ascending, and which pattern each bar is played with. */
type Playing = {
  readonly timeline: Timeline;
  readonly patterns: ReadonlyMap<Timeline['bars'][number], Pattern | undefined>;
  readonly notes: readonly Note[];
};

/**
 * When the pedal is down under the bars whose pattern asks for it (`pedal`), ascending and without
 * overlap; up at the timeline's end at the latest. `notes` are those that `realise` gives over the
 * same timeline and patterns; only the hands' count.
 *
 * It is changed at each chord: with the first hit that anticipates the new chord, otherwise where the
 * chord is written; at bar lines where the left hand strikes again, so that low notes stay clear; and
 * with a bass that approaches the next chord, as it does not belong to this one.
 * It stays up in N.C., through rests of both hands that are longer than a beat, and where a bar's
 * pattern does not use it. Each press comes `PEDAL_LAG` after the keys that it is to hold.
 */
export function pedalSpans(
  timeline: Timeline,
  patternAt: PatternAt,
  notes: readonly Note[],
): PedalSpan[] {
  const patterns = new Map(timeline.bars.map((bar, i) => [bar, patternAt(bar, i)]));
  if (![...patterns.values()].some((pattern) => pattern?.pedal)) return [];
  const ofHands = notes.filter(({ part }) => part === 'left' || part === 'right');
  const played = ofHands.toSorted((a, b) => a.startTick - b.startTick);
  const playing = { timeline, patterns, notes: played };
  const changes = [...chordChanges(playing), ...barChanges(playing), ...approachChanges(playing)];
  return spansBetween(withRests(changes, playing), played, timeline.lengthTicks);
}

/**
 * The notes as they sound: what a hand lets go while the pedal is down sounds until it is let up.
 * Other parts, and `pedals` of none, leave notes as they are. `pedals` ascend.
 */
export function pedalled(notes: readonly Note[], pedals: readonly PedalSpan[]): Note[] {
  return notes.map((note) => {
    if (note.part !== 'left' && note.part !== 'right') return note;
    const endTick = note.startTick + note.durationTicks;
    const pedal = lastDown(pedals, endTick);
    if (!pedal || endTick >= pedal.upTick) return note;
    return { ...note, durationTicks: pedal.upTick - note.startTick };
  });
}

/** The pedal where only `fromTick` to `toTick` is played: down again after the first keys there, up at the end. */
export function pedalsWithin(
  pedals: readonly PedalSpan[],
  fromTick: Ticks,
  toTick: Ticks,
): PedalSpan[] {
  return pedals
    .map(({ downTick, upTick }) => ({
      downTick: downTick < fromTick ? fromTick + PEDAL_LAG : downTick,
      upTick: Math.min(upTick, toTick),
    }))
    .filter(({ downTick, upTick }) => downTick < upTick);
}

/** The last of the spans that is pressed at or before a tick. */
function lastDown(pedals: readonly PedalSpan[], tick: Ticks): PedalSpan | undefined {
  let low = 0;
  let high = pedals.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (pedals[middle]!.downTick <= tick) low = middle + 1;
    else high = middle;
  }
  return pedals[low - 1];
}

function isUsedAt({ timeline, patterns }: Playing, tick: Ticks): boolean {
  const bar = barAt(timeline, tick);
  const pattern = bar && patterns.get(bar);
  return pattern?.pedal !== undefined && chordAt(timeline, tick)?.chord !== 'no-chord';
}

function chordChanges(playing: Playing): Change[] {
  const { chords } = playing.timeline;
  const early = anticipations(playing);
  return chords.map(({ startTick }, i) => ({
    tick: Math.max(early.get(startTick) ?? startTick, chords[i - 1]?.startTick ?? 0),
    isUsed: isUsedAt(playing, startTick),
  }));
}

/** For each chord's start that is anticipated, where the first hit that does so begins. */
function anticipations(playing: Playing): ReadonlyMap<Ticks, Ticks> {
  const first = new Map<Ticks, Ticks>();
  for (const note of playing.notes) {
    const change = chordAt(playing.timeline, note.startTick)?.endTick;
    const hit = hitOf(note, playing);
    if (change === undefined || !hit?.anticipates) continue;
    if (note.startTick + hit.length >= change && !first.has(change))
      first.set(change, note.startTick);
  }
  return first;
}

/** The hit that made a note of a hand. */
function hitOf(
  { part, startTick, patternTick }: Note,
  { timeline, patterns }: Playing,
): Hit | undefined {
  const bar = barAt(timeline, startTick);
  const pattern = bar && patterns.get(bar);
  if (!pattern || patternTick === undefined || (part !== 'left' && part !== 'right'))
    return undefined;
  const main = patternTicks(pattern);
  const hits: readonly Hit[] = patternTick < main ? pattern[part] : (pattern.ending?.[part] ?? []);
  const at = patternTick < main ? patternTick : patternTick - main;
  return hits.find((each) => each.at === at);
}

function approachChanges(playing: Playing): Change[] {
  return playing.notes
    .filter((note) => hitOf(note, playing)?.play.some((tone) => tone === 'approach'))
    .map(({ startTick }) => ({ tick: startTick, isUsed: isUsedAt(playing, startTick) }));
}

function barChanges(playing: Playing): Change[] {
  const { timeline, notes } = playing;
  const bass = new Set(notes.filter(({ part }) => part === 'left').map((note) => note.startTick));
  let wasUsed = false;
  return timeline.bars.flatMap(({ startTick }) => {
    const isUsed = isUsedAt(playing, startTick);
    const isChange = isUsed !== wasUsed || bass.has(startTick);
    wasUsed = isUsed;
    return isChange ? [{ tick: startTick, isUsed }] : [];
  });
}

/** The changes, ascending, with the pedal up through rests of both hands that are longer than a beat. */
function withRests(changes: readonly Change[], playing: Playing): Change[] {
  const rests = restsOf(playing);
  const inRest = (tick: Ticks) => rests.some(({ from, to }) => tick >= from && tick < to);
  return [
    ...changes.filter(({ tick }) => !inRest(tick)),
    ...rests.flatMap(({ from, to }) => [
      { tick: from, isUsed: false },
      { tick: to, isUsed: isUsedAt(playing, to) },
    ]),
  ].toSorted((a, b) => a.tick - b.tick);
}

type Rest = { readonly from: Ticks; readonly to: Ticks };

function restsOf({ notes, timeline }: Playing): Rest[] {
  const rests: Rest[] = [];
  let from = 0;
  for (const { startTick, durationTicks, writtenTicks } of notes) {
    if (startTick - from > beatTicksAt(timeline, from)) rests.push({ from, to: startTick });
    from = Math.max(from, startTick + (writtenTicks ?? durationTicks));
  }
  if (timeline.lengthTicks - from > beatTicksAt(timeline, from))
    rests.push({ from, to: timeline.lengthTicks });
  return rests;
}

function beatTicksAt(timeline: Timeline, tick: Ticks): Ticks {
  const bar = barAt(timeline, tick);
  return bar ? Math.max(...beatLengths(bar.meter)) : TICKS_PER_QUARTER;
}

/** Between two changes, the pedal from shortly after the first keys on that it can hold. */
function spansBetween(
  changes: readonly Change[],
  notes: readonly Note[],
  lengthTicks: Ticks,
): PedalSpan[] {
  const spans: PedalSpan[] = [];
  let next = 0;
  let soundsUntil = 0;
  for (const [i, { tick, isUsed }] of changes.entries()) {
    const upTick = Math.min(changes[i + 1]?.tick ?? lengthTicks, lengthTicks);
    for (; next < notes.length && notes[next]!.startTick < tick; next++)
      soundsUntil = Math.max(soundsUntil, notes[next]!.startTick + notes[next]!.durationTicks);
    const firstTick = soundsUntil > tick ? tick : (notes[next]?.startTick ?? lengthTicks);
    const downTick = firstTick + PEDAL_LAG;
    if (isUsed && downTick < upTick) spans.push({ downTick, upTick });
  }
  return spans;
}
