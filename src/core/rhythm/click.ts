import type { KeyNumber } from '../harmony/pitch.ts';
import type { Timeline } from '../song/timeline.ts';
import { barTicks, beatStarts, groupStarts, hasGroupedBeats, type Meter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { Note } from './note.ts';

/** Which beats of a bar click: all, the stressed ones, the downbeat, the weak ones, or those listed (0-based felt beats). */
export type ClickBeats = 'all' | 'groups' | 'downbeat' | 'back-beat' | readonly number[];

/** The click in the General MIDI percussion map: high wood block on the downbeat, low wood block elsewhere. */
export const CLICK_KEYS: Readonly<Record<'downbeat' | 'beat', KeyNumber>> = {
  downbeat: 76,
  beat: 77,
};

/** How loud a click is, in MIDI velocity: on the downbeat, on another stressed beat, on a weak one. */
export const CLICK_VELOCITY = { downbeat: 112, stressed: 92, weak: 80 } as const;

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

function barClicks(startTick: Ticks, meter: Meter, clickBeats: ClickBeats): Note[] {
  const stressed = stressedBeats(meter);
  return clickTicks(meter, clickBeats).map((tick) => ({
    part: 'click',
    keyNumber: tick === 0 ? CLICK_KEYS.downbeat : CLICK_KEYS.beat,
    startTick: startTick + tick,
    durationTicks: CLICK_TICKS,
    velocity:
      tick === 0
        ? CLICK_VELOCITY.downbeat
        : CLICK_VELOCITY[stressed.includes(tick) ? 'stressed' : 'weak'],
  }));
}

/** The click for every bar of a timeline, ascending: on the felt beats that `clickBeats` names, straight, the downbeat accented. */
export function clickTrack(
  timeline: Pick<Timeline, 'bars'>,
  clickBeats: ClickBeats = 'all',
): Note[] {
  return timeline.bars.flatMap((bar) => barClicks(bar.startTick, bar.meter, clickBeats));
}

/** So many bars (0 or more) of click on every felt beat before tick 0, ascending, at negative ticks. */
export function countIn(meter: Meter, bars: number): Note[] {
  return Array.from({ length: bars }, (_, i) => (i - bars) * barTicks(meter)).flatMap((start) =>
    barClicks(start, meter, 'all'),
  );
}
