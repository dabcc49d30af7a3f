import { type Seconds, TICKS_PER_QUARTER, type Ticks } from './ticks.ts';

/** Beats per minute. */
export type Bpm = number;

/** So many beats of `beatTicks` each to the minute: a dotted quarter at 60 is `{ bpm: 60, beatTicks: 720 }`. */
export type Tempo = { readonly bpm: Bpm; readonly beatTicks: Ticks };

export type TempoMark = { readonly tick: Ticks; readonly tempo: Tempo };

/** Marks ascend by tick and start at tick 0; each tempo holds until the next mark. */
export type TempoMap = readonly TempoMark[];

/** Shortest and longest beat that a tempo may count, in ticks: from a 64th to a bar of 32 halves. */
export const BEAT_TICKS = { lowest: 30, highest: 30_720 } as const;

/** Slowest and fastest tempo that can be set, in felt beats a minute. */
export const BPM_RANGE = { lowest: 20, highest: 320 } as const;

/** One tempo throughout; the beat is a quarter note unless `beatTicks` says otherwise. */
export function steadyTempo(bpm: Bpm, beatTicks: Ticks = TICKS_PER_QUARTER): TempoMap {
  if (!(bpm > 0 && Number.isFinite(bpm))) throw new Error(`tempo must be positive: ${bpm}`);
  if (!(beatTicks > 0)) throw new Error(`beat must be positive: ${beatTicks}`);
  return [{ tick: 0, tempo: { bpm, beatTicks } }];
}

/** Seconds that one tick lasts at a tempo. */
export function secondsPerTick(tempo: Tempo): Seconds {
  return 60 / (tempo.bpm * tempo.beatTicks);
}

function markAt(marks: TempoMap, i: number): TempoMark {
  const mark = marks[i];
  if (!mark) throw new Error('a tempo map needs a mark at tick 0');
  return mark;
}

/**
 * Time at which a score position sounds, in seconds from the downbeat of bar 1 (tick 0).
 * The tempo holds from one mark to the next; before the first mark (a count-in) the first
 * tempo applies, so the result can be negative. `marks` ascend and start at tick 0.
 */
export function secondsAt(marks: TempoMap, tick: Ticks): Seconds {
  let seconds = 0;
  let mark = markAt(marks, 0);
  for (let i = 1; i < marks.length; i++) {
    const next = markAt(marks, i);
    if (next.tick > tick) break;
    seconds += (next.tick - mark.tick) * secondsPerTick(mark.tempo);
    mark = next;
  }
  return seconds + (tick - mark.tick) * secondsPerTick(mark.tempo);
}

/** The score position that sounds at a time: the inverse of `secondsAt`, not rounded to whole ticks. */
export function tickAt(marks: TempoMap, seconds: Seconds): number {
  let left = seconds;
  let mark = markAt(marks, 0);
  for (let i = 1; i < marks.length; i++) {
    const next = markAt(marks, i);
    const span = (next.tick - mark.tick) * secondsPerTick(mark.tempo);
    if (left < span) break;
    left -= span;
    mark = next;
  }
  return mark.tick + left / secondsPerTick(mark.tempo);
}
