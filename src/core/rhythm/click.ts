import type { KeyNumber } from '../harmony/pitch.ts';
import type { Timeline } from '../song/timeline.ts';
import {
  beatLengths,
  beatStarts,
  groupStarts,
  hasGroupedBeats,
  type Meter,
} from '../time/meter.ts';
import { TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import type { Note } from './note.ts';

/** Which beats of a bar click: all, the stressed ones, the downbeat, the weak ones, or those listed (0-based felt beats). */
export type ClickBeats = 'all' | 'groups' | 'downbeat' | 'back-beat' | readonly number[];

/** Length in ticks of each note value that can tick softly between the beats. */
export const SUBDIVISION_TICKS = {
  quarters: TICKS_PER_QUARTER,
  eighths: TICKS_PER_QUARTER / 2,
  triplets: TICKS_PER_QUARTER / 3,
  sixteenths: TICKS_PER_QUARTER / 4,
} as const satisfies Readonly<Record<string, Ticks>>;

export type Subdivision = keyof typeof SUBDIVISION_TICKS;

/** What the beats sound like. */
export const CLICK_SOUNDS = ['tick', 'wood', 'beep'] as const;

export type ClickSound = (typeof CLICK_SOUNDS)[number];

/** How a bar clicks; nothing between the beats and the tick where they are not said. */
export type ClickManner = {
  readonly beats: ClickBeats;
  readonly subdivision?: Subdivision;
  readonly sound?: ClickSound;
};

/**
 * The click in the General MIDI percussion map, which has no metronome of its own: each sound is a
 * higher and a lower key of one kind, on the downbeat and elsewhere (wood blocks, claves and side
 * stick, agogo bells).
 */
export const CLICK_KEYS: Readonly<
  Record<ClickSound, Readonly<Record<'downbeat' | 'beat', KeyNumber>>>
> = {
  tick: { downbeat: 76, beat: 77 },
  wood: { downbeat: 75, beat: 37 },
  beep: { downbeat: 67, beat: 68 },
};

/** What ticks between the beats, whatever their sound: the closed hi-hat of General MIDI. */
export const BETWEEN_KEY: KeyNumber = 42;

/**
 * How loud a click is, in MIDI velocity: on the downbeat, on another stressed beat, on a weak one,
 * between the beats. Apart by about 2, 4 and 5 dB as a velocity is heard (40 lg(v/127) dB).
 */
export const CLICK_VELOCITY = { downbeat: 112, stressed: 100, weak: 80, between: 60 } as const;

/** Length of a click's note in ticks; the sound itself is shorter. */
export const CLICK_TICKS: Ticks = 60;

/**
 * Where the stressed beats of a bar start, in ticks. Over 2 and 4 they are the starts of the meter's
 * groups; over 8 and 16, where the groups are the felt beats, every second of an even number of
 * beats (1 and 3 of 12/8) and otherwise the first alone.
 */
export function stressedBeats(meter: Meter): Ticks[] {
  if (!hasGroupedBeats(meter)) return groupStarts(meter);
  const beats = beatStarts(meter);
  return beats.filter((_, beat) => (beats.length % 2 === 0 ? beat % 2 === 0 : beat === 0));
}

/** Where a bar clicks, in ticks from its downbeat, ascending. Listed beats that the bar does not have are left out. */
export function clickTicks(meter: Meter, clickBeats: ClickBeats): Ticks[] {
  const beats = beatStarts(meter);
  const stressed = stressedBeats(meter);
  if (typeof clickBeats !== 'string') return beats.filter((_, beat) => clickBeats.includes(beat));
  const chosen: Readonly<Record<typeof clickBeats, Ticks[]>> = {
    all: beats,
    groups: stressed,
    downbeat: [0],
    'back-beat': beats.filter((tick) => !stressed.includes(tick)),
  };
  return chosen[clickBeats];
}

/**
 * The note values that can tick between the beats of a meter, the longest first: those that divide
 * every felt beat without a rest, and at least one of them into more than one. Eighths and
 * sixteenths in 6/8, also quarters in 2/2; none where the beats cannot be divided.
 */
export function subdivisionsOf(meter: Meter): Subdivision[] {
  const lengths = beatLengths(meter);
  return (Object.keys(SUBDIVISION_TICKS) as Subdivision[]).filter((name) => {
    const ticks = SUBDIVISION_TICKS[name];
    return lengths.every((beat) => beat % ticks === 0) && lengths.some((beat) => beat > ticks);
  });
}

/** Every place of a bar where a note value ticks, the beats included, ascending; none where the meter does not take it. */
export function subdivisionTicks(meter: Meter, subdivision: Subdivision): Ticks[] {
  if (!subdivisionsOf(meter).includes(subdivision)) return [];
  const ticks = SUBDIVISION_TICKS[subdivision];
  const lengths = beatLengths(meter);
  return beatStarts(meter).flatMap((start, beat) =>
    Array.from({ length: lengths[beat]! / ticks }, (_, i) => start + i * ticks),
  );
}

function beatVelocity(tick: Ticks, stressed: readonly Ticks[]): number {
  if (tick === 0) return CLICK_VELOCITY.downbeat;
  return CLICK_VELOCITY[stressed.includes(tick) ? 'stressed' : 'weak'];
}

/** The clicks of one bar that starts at `startTick`, ascending: see `clickTrack`. */
export function barClicks(
  startTick: Ticks,
  meter: Meter,
  { beats, subdivision, sound = 'tick' }: ClickManner,
): Note[] {
  const stressed = stressedBeats(meter);
  const keys = CLICK_KEYS[sound];
  const beatTicks = clickTicks(meter, beats);
  const between = subdivision
    ? subdivisionTicks(meter, subdivision).filter((tick) => !beatTicks.includes(tick))
    : [];
  const onBeats = beatTicks.map((tick) => ({
    tick,
    keyNumber: tick === 0 ? keys.downbeat : keys.beat,
    velocity: beatVelocity(tick, stressed),
  }));
  const softly = between.map((tick) => ({
    tick,
    keyNumber: BETWEEN_KEY,
    velocity: CLICK_VELOCITY.between,
  }));
  return [...onBeats, ...softly]
    .toSorted((a, b) => a.tick - b.tick)
    .map(({ tick, ...click }) => ({
      part: 'click',
      ...click,
      startTick: startTick + tick,
      durationTicks: CLICK_TICKS,
    }));
}

/**
 * The click for every bar of a timeline, ascending, straight whatever the swing: the felt beats that
 * are named, the downbeat and the meter's other stresses louder; and softly every place of the
 * subdivision that is not such a beat, in the bars whose meter takes it.
 */
export function clickTrack(
  timeline: Pick<Timeline, 'bars'>,
  manner: ClickManner = { beats: 'all' },
): Note[] {
  return timeline.bars.flatMap((bar) => barClicks(bar.startTick, bar.meter, manner));
}
