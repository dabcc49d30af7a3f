import type { KeyNumber } from '../harmony/pitch.ts';
import { ok, type Result } from '../result.ts';
import type { Timeline } from '../song/timeline.ts';
import { barTicks } from '../time/meter.ts';
import { TICKS_PER_QUARTER } from '../time/ticks.ts';
import { type HandName, keysOfHand, type Voicing } from '../voicing/voicing.ts';
import { type ChordLine, chordLine } from './chordLine.ts';
import {
  type LaidBar,
  type LaidBars,
  layBars,
  type NoPatternForMeter,
  swingOf,
} from './laidBars.ts';
import type { Note } from './note.ts';
import { cutOverlaps, moveNotes } from './noteList.ts';
import { type Hands, type LeftHit, patternTicks, type RightHit, type Touch } from './pattern.ts';
import type { PatternAt } from './patternAt.ts';
import { type BarEvent, type Course, eventsInBar, placeEvents } from './placedEvents.ts';
import { type PartPlaying, soundingNotes } from './sounding.ts';
import { bassKeys, voiceKeys } from './toneKeys.ts';

/** How loud each touch is played, in MIDI velocity; the left hand stays a little under the right (common practice). */
export const TOUCH_VELOCITY: Readonly<Record<HandName, Readonly<Record<Touch, number>>>> = {
  left: { ghost: 40, plain: 66, accent: 88 },
  right: { ghost: 44, plain: 72, accent: 96 },
};

/** A short hit sounds for half its length, an eighth at the most (common practice for staccato). */
export const SHORT_HIT = { share: 0.5, longest: TICKS_PER_QUARTER / 2 } as const;

/** `loop`: the timeline is played round and round; see `realise` for what that changes. */
export type RealiseOptions = { readonly loop?: boolean };

/**
 * The notes that both hands play: the patterns over the chords of a timeline, swung, ascending by
 * start and then by key number. `voicings` has one entry for each of `timeline.chords`, in order.
 * A bar where `patternAt` gives undefined is rest for both hands. A bar whose meter is not its
 * pattern's is the error; `bar` counts the timeline's bars from 0.
 *
 * Which bar of a pattern is played where, and when its ending: `layBars`. Where hits end at seams
 * between patterns: `placeEvents`. What they play: `bassKeys` against the voicing's left hand,
 * `voiceKeys` out of its right hand.
 *
 * Chords: a hit sounds with the chord at its start. When the chord changes while it is held, it is
 * struck again with the new chord if at least a felt beat of it is left there, otherwise it ends at
 * the change; keys that the change leaves alone are simply held. A hit that `anticipates` and
 * reaches the next change (its written end at the change or later) plays with the chord it leads
 * into from its start, also over a bar line or into the next section. N.C. is rest for both hands.
 * `approach` is a semitone under the bass of the chord that the left hand plays next; after its
 * last hit, under that of the chord that comes next, or of its own where none does.
 *
 * A short hit sounds as `SHORT_HIT` says. Two notes of one hand never overlap on one key. Swing
 * (`swungTick`) moves both ends of every note, except inside beats that are divided into a tuplet.
 * `patternTick` is the hit's `at`; hits of an ending are counted on from the pattern's end.
 *
 * Played once, everything ends with the timeline. With `loop` the last chord leads into the first:
 * anticipations and approaches are made into it, and a hit of the last bar may go on sounding past
 * `lengthTicks`, until its hand's first hit of the next time round.
 */
export function realise(
  timeline: Timeline,
  voicings: readonly Voicing[],
  patternAt: PatternAt,
  options: RealiseOptions = {},
): Result<Note[], NoPatternForMeter> {
  if (voicings.length !== timeline.chords.length)
    throw new Error(`${voicings.length} voicings for ${timeline.chords.length} chords`);
  const laid = layBars(timeline, patternAt);
  if (!laid.ok) return laid;
  const course: Course = options.loop ? 'loop' : 'once';
  const line = chordLine(timeline, course);
  const song = { timeline, laid: laid.value, course, line, voicings };
  const notes = [...leftNotes(song), ...rightNotes(song)];
  return ok(moveNotes(cutOverlaps(notes), swingOf(timeline, laid.value)));
}

/** Everything the hands play from. */
type Laid = {
  readonly timeline: Timeline;
  readonly laid: LaidBars;
  readonly course: Course;
  readonly line: ChordLine;
  readonly voicings: readonly Voicing[];
};

function leftNotes({ timeline, laid, course, line, voicings }: Laid): Note[] {
  const held = voicings.map((voicing) => keysOfHand(voicing, 'left'));
  const bassOf = (place: number | undefined) =>
    place === undefined || !line.spanAt(place) ? undefined : held[place % line.count]?.[0];
  const events = placeEvents(timeline, laid, course, (bar) => hitsInBar(bar, 'left'));
  return soundingNotes<LeftHit>(events, line, {
    ...handPlaying('left'),
    keysOf: (hit, place, nextPlace) => {
      const chord = line.spanAt(place)?.chord;
      const keys = held[place % line.count] ?? [];
      if (!chord || chord === 'no-chord' || keys[0] === undefined) return [];
      const nextBass = bassOf(nextPlace ?? place + 1) ?? keys[0];
      return uniqueKeys(hit.play.flatMap((tone) => bassKeys(tone, chord, keys, nextBass)));
    },
  });
}

function rightNotes({ timeline, laid, course, line, voicings }: Laid): Note[] {
  const held = voicings.map((voicing) => keysOfHand(voicing, 'right'));
  const events = placeEvents(timeline, laid, course, (bar) => hitsInBar(bar, 'right'));
  return soundingNotes<RightHit>(events, line, {
    ...handPlaying('right'),
    keysOf: (hit, place) => {
      if (line.spanAt(place)?.chord === 'no-chord') return [];
      const keys = held[place % line.count] ?? [];
      return uniqueKeys(hit.play.flatMap((tone) => voiceKeys(tone, keys)));
    },
  });
}

function handPlaying(hand: HandName): Omit<PartPlaying<LeftHit | RightHit>, 'keysOf'> {
  return {
    part: hand,
    anticipates: (hit) => hit.anticipates === true,
    velocityOf: (hit) => TOUCH_VELOCITY[hand][hit.touch],
    soundingTicks: (hit, ticks) =>
      hit.held
        ? ticks
        : Math.max(1, Math.round(Math.min(ticks * SHORT_HIT.share, SHORT_HIT.longest))),
  };
}

function hitsInBar<H extends HandName>(
  { pattern, patternBar, isEnding }: LaidBar,
  hand: H,
): BarEvent<Hands[H][number]>[] {
  if (!isEnding || !pattern.ending)
    return eventsInBar<Hands[H][number]>(pattern[hand], patternBar, barTicks(pattern.meter));
  return pattern.ending[hand].map((event) => ({
    event,
    inBar: event.at,
    patternTick: patternTicks(pattern) + event.at,
  }));
}

function uniqueKeys(keys: readonly KeyNumber[]): KeyNumber[] {
  return [...new Set(keys)].toSorted((a, b) => a - b);
}
