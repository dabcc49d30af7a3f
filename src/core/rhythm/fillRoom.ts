import {
  barTicks,
  beatLengths,
  beatStarts,
  groupStarts,
  hasGroupedBeats,
  type Meter,
  tempoBeatTicks,
  unitTicks,
} from '../time/meter.ts';
import { type Bpm, secondsPerTick } from '../time/tempoMap.ts';
import { type Seconds, TICKS_PER_QUARTER, type Ticks } from '../time/ticks.ts';
import { HAND_LIMITS, type HandLimits } from './handLimits.ts';
import {
  DIVISIONS,
  type Division,
  type Pattern,
  type PatternBeat,
  patternBeats,
} from './pattern.ts';

/** The bar that a fill is made for, at a tempo, and what the player's hands can do. */
export type FillRoom = {
  /** One bar, as the pattern's last. */
  readonly bar: Pattern;
  readonly beats: readonly PatternBeat[];
  /** Where the fill may begin: the groove holds until there. */
  readonly turn: Ticks;
  readonly end: Ticks;
  readonly tickSec: Seconds;
  readonly limits: HandLimits;
};

/** See `FillRoom`. `bpm` counts what the meter's tempo counts. */
export function fillRoom(bar: Pattern, bpm: Bpm, limits: HandLimits = HAND_LIMITS): FillRoom {
  return {
    bar,
    beats: patternBeats(bar),
    turn: turnOf(bar.meter),
    end: barTicks(bar.meter),
    tickSec: secondsPerTick({ bpm, beatTicks: tempoBeatTicks(bar.meter) }),
    limits,
  };
}

/** So much of a bar stays as it is at least. */
const KEPT_SHARE = 1 / 3;

/**
 * Where the second part of a bar begins: at a stress if there is one after its first third, else at a
 * felt beat, else (a bar of one beat) at a written unit, at the least in its middle. Beat 3 of 4/4, beat
 * 2 of 3/4, beat 4 of 5/4.
 */
function turnOf(meter: Meter): Ticks {
  const bar = barTicks(meter);
  const units = Array.from({ length: meter.beats }, (_, i) => i * unitTicks(meter));
  const places = [...groupStarts(meter), ...beatStarts(meter), ...units];
  return places.find((tick) => tick > 0 && tick >= KEPT_SHARE * bar) ?? Math.round(bar / 2);
}

/** An eighth: the pace of a fill, in beats that are not divided in three. */
const USUAL_STEP: Ticks = TICKS_PER_QUARTER / 2;

/** From this ratio on the eighths swing so much that triplets go with them. */
const SWUNG_RATIO = 1.5;

function isInThrees({ length, division }: PatternBeat): boolean {
  // A quarter of 480 ticks holds one factor of three; only a dotted value holds two.
  return length % 9 === 0 || division === 3 || division === 6;
}

/** The division in which a fill moves through a beat: eighths, or triplets where the beat has them. */
function usualPace(beat: PatternBeat): Division {
  const family: readonly Division[] = isInThrees(beat) ? [3, 6] : [2, 4, 8];
  return family.find((pace) => beat.length / pace <= USUAL_STEP) ?? family[0]!;
}

/** The division in which a fill gathers pace: the pattern's own where that is finer, triplets over swung eighths. */
function quickPace(beat: PatternBeat, { bar }: FillRoom): Division {
  const usual = usualPace(beat);
  if (beat.division > usual && beat.division % usual === 0)
    return DIVISIONS.find((pace) => pace === 2 * usual) ?? usual;
  const { level, ratio } = bar.swing;
  const isSwung = level === 'eighth' && ratio >= SWUNG_RATIO && !hasGroupedBeats(bar.meter);
  return isSwung && beat.division === 2 ? 3 : usual;
}

/** How a fill moves: in its usual pace, or quicker in the last beat. */
export type Gait = 'even' | 'gathering';

/** The finest division of a beat that leaves so much time from step to step; 1 where none does. */
function paceWithin(beat: PatternBeat, gait: Gait, gapSec: Seconds, room: FillRoom): Division {
  const isLast = beat.start + beat.length === room.end;
  const wanted =
    gait === 'gathering' && isLast ? [quickPace(beat, room), usualPace(beat)] : [usualPace(beat)];
  return wanted.find((pace) => shortestSec(beat, pace, room) >= gapSec) ?? 1;
}

function shortestSec({ length }: PatternBeat, pace: Division, { bar, tickSec }: FillRoom): Seconds {
  const isSwung = pace % 2 === 0 && bar.swing.ratio > 1;
  const share = isSwung ? 2 / (1 + bar.swing.ratio) : 1;
  return (length / pace) * tickSec * share;
}

/** One place of a fill: it lasts to the next one, or to the bar's end. `pace`: how many of its kind a beat has. */
export type FillStep = { readonly at: Ticks; readonly length: Ticks; readonly pace: Division };

/**
 * The steps of a fill from a tick on to the bar's end, with at least so many seconds from each to the
 * next; one step from the tick where none stands there.
 */
export function fillSteps(from: Ticks, gait: Gait, gapSec: Seconds, room: FillRoom): FillStep[] {
  const steps = room.beats.flatMap((beat) => {
    const pace = paceWithin(beat, gait, gapSec, room);
    return Array.from({ length: pace }, (_, i) => ({
      at: beat.start + Math.round((i * beat.length) / pace),
      pace,
    }));
  });
  const after = steps.filter(({ at }) => at >= from);
  const used = after.length > 0 ? after : [{ at: from, pace: 1 as const }];
  return used.map((step, i) => ({ ...step, length: (used[i + 1]?.at ?? room.end) - step.at }));
}

/** The felt beats of a fill from a tick on, as steps; one step from the tick where no beat begins there. */
export function fillBeats(from: Ticks, room: FillRoom): FillStep[] {
  const starts = room.beats.map(({ start }) => start).filter((start) => start >= from);
  const places = starts.length > 0 ? starts : [from];
  return places.map((at, i) => ({ at, length: (places[i + 1] ?? room.end) - at, pace: 1 }));
}

/** Length of the beat in which a tick stands. */
export function beatAround(at: Ticks, { bar }: FillRoom): Ticks {
  const beat = beatStarts(bar.meter).findLastIndex((start) => start <= at);
  return beatLengths(bar.meter)[beat] ?? TICKS_PER_QUARTER;
}

/**
 * The divisions of the bar's beats with hits at these places: each beat's own where they stand on its
 * steps, else the coarsest that holds them.
 */
export function divisionsHolding(ticks: readonly Ticks[], { beats }: FillRoom): Division[] {
  return beats.map(({ start, length, division }) => {
    const inside = ticks.filter((tick) => tick >= start && tick < start + length);
    const holds = (steps: Division) => inside.every((tick) => onStep(tick - start, length, steps));
    return holds(division) ? division : (DIVISIONS.find(holds) ?? division);
  });
}

/** Whether a place stands on a step of its beat, steps being rounded to whole ticks. */
function onStep(offset: Ticks, length: Ticks, steps: Division): boolean {
  const nearest = Math.round((offset * steps) / length);
  return Math.round((nearest * length) / steps) === offset;
}
