import type { Seconds } from '../core/time/ticks.ts';
import type { AudioRoom } from './context.ts';
import type { Instruments } from './instruments.ts';
import {
  type DueNote,
  dueNotes,
  endOf,
  type Pass,
  type Position,
  positionAt,
  type Span,
  spansAfter,
  wholeSpan,
} from './pass.ts';
import { type Revise, revisedPlan } from './revision.ts';
import { createScheduler } from './scheduler.ts';
import { createWorkerTimer, type Timer } from './workerTimer.ts';

/** Time from the command to play to the first pass's beginning: what sounded before is silent by then. */
export const START_DELAY_SEC: Seconds = 0.08;

/** The next pass is asked for when the end of the last is so much further away than the look-ahead. */
export const FETCH_AHEAD_SEC: Seconds = 0.1;

/** Play-back counts as ended so long after the last pass's end; the last notes die away meanwhile. */
export const TAIL_SEC: Seconds = 1.5;

/** Notes that are later than this (the page stood still) are left out: rather a gap than a burst. */
export const TOO_LATE_SEC: Seconds = 0.15;

/** What has ended stays known so long: what is heard now lags behind, and takes look back. */
const REMEMBERED_SEC: Seconds = 1;

/**
 * What was handed to the instruments since the player was made. `late` notes were handed over after
 * they were due, the worst by `worstLateSec`; `leftOut` were too late to be struck at all.
 */
export type PlayerStatistics = {
  readonly struck: number;
  readonly late: number;
  readonly leftOut: number;
  readonly worstLateSec: Seconds;
};

/** Plays pass after pass. Every method may be called at any time, also from within
 * `nextPass` and `revise`'s function. */
export type Player<P extends Pass = Pass> = {
  /**
   * Ends what plays and starts anew, quietly, about 0.1 s from now. `nextPass` is asked for the
   * first pass at once and for each next one about 0.3 s before the last is over (at its end at the
   * latest); passes follow each other without a gap, a lead-in taking its own time. Undefined means
   * that nothing follows: play-back ends once the last notes have died away.
   */
  play(nextPass: () => P | undefined): void;
  /**
   * Replaces what plays without a gap: what is due within the look-ahead (0.2 s) stays, everything
   * after that comes from the new pass. `revise` is asked for each pass that is not over: the one
   * that sounds, and the next one if it has been fetched already; undefined leaves it as it is. No
   * note sounds twice or is lost because it moved over the edge; see `notesToSound`. `nextPass` is
   * asked again where it had said that nothing follows. Without play-back nothing happens.
   */
  revise(revise: Revise<P>): void;
  /** Silence within 20 ms; `onEnd` is not told. */
  stop(): void;
  /** What is heard now, latency of the output considered; undefined when nothing plays. */
  position(): Position<P> | undefined;
  /**
   * What plays, in order of time: passes that sound or were asked for already, and those that have
   * ended within about the last second; none when nothing plays. Times are the clock's.
   */
  spans(): readonly Span<P>[];
  /** Calls `listener` whenever play-back has come to its end by itself; returns how to end that. */
  onEnd(listener: () => void): () => void;
  statistics(): PlayerStatistics;
  /** Stops and frees the timer. Nothing may be played afterwards. */
  dispose(): void;
};

type PlayerEvent<P extends Pass> =
  | { readonly kind: 'note'; readonly atSec: Seconds; readonly due: DueNote<P> }
  | { readonly kind: 'fetch'; readonly atSec: Seconds }
  | { readonly kind: 'end'; readonly atSec: Seconds };

/** Play-back from `play` to its end. `isLast`: nothing follows the last span. */
type Run<P extends Pass> = {
  readonly nextPass: () => P | undefined;
  spans: readonly Span<P>[];
  isLast: boolean;
};

function noteEvents<P extends Pass>(due: readonly DueNote<P>[]): PlayerEvent<P>[] {
  return due.map((one) => ({ kind: 'note', atSec: one.atSec, due: one }));
}

/** The event that follows the last span: fetching the next pass, or the end. */
function boundary<P extends Pass>({ spans, isLast }: Run<P>, nowSec: Seconds): PlayerEvent<P> {
  const last = spans.at(-1);
  const endSec = last ? endOf(last) : nowSec;
  return isLast
    ? { kind: 'end', atSec: endSec + TAIL_SEC }
    : { kind: 'fetch', atSec: endSec - FETCH_AHEAD_SEC };
}

const NOTHING_STRUCK: PlayerStatistics = { struck: 0, late: 0, leftOut: 0, worstLateSec: 0 };

/** The statistics after one more note, handed over `lateSec` after it was due (negative: before). */
function counted(before: PlayerStatistics, lateSec: Seconds): PlayerStatistics {
  const isStruck = lateSec <= TOO_LATE_SEC;
  return {
    struck: before.struck + (isStruck ? 1 : 0),
    late: before.late + (lateSec > 0 ? 1 : 0),
    leftOut: before.leftOut + (isStruck ? 0 : 1),
    worstLateSec: Math.max(before.worstLateSec, lateSec),
  };
}

/** A player on the room's clock that strikes `instruments`; `timer` is what wakes it. */
export function createPlayer<P extends Pass = Pass>(
  room: Pick<AudioRoom, 'clock' | 'outputLatencySec'>,
  instruments: Pick<Instruments, 'strike' | 'silence' | 'startQuietly'>,
  timer: Timer = createWorkerTimer(),
): Player<P> {
  const { clock } = room;
  const listeners = new Set<() => void>();
  const scheduler = createScheduler<PlayerEvent<P>>(clock, timer, handle);
  let statistics = NOTHING_STRUCK;
  let run: Run<P> | undefined;

  function handle(event: PlayerEvent<P>): void {
    if (event.kind === 'note') strike(event.due);
    else if (event.kind === 'fetch') fetchPass();
    else end();
  }

  function strike({ note, atSec }: DueNote<P>): void {
    const lateSec = clock() - atSec;
    statistics = counted(statistics, lateSec);
    if (lateSec <= TOO_LATE_SEC) instruments.strike(note, atSec);
  }

  function fetchPass(): void {
    const asking = run;
    const pass = asking?.nextPass();
    if (!asking || asking !== run) return;
    if (pass) append(asking, pass);
    else asking.isLast = true;
    scheduler.add([boundary(asking, clock())]);
  }

  function append(to: Run<P>, pass: P): void {
    const last = to.spans.at(-1);
    const soonestSec = clock() + START_DELAY_SEC;
    // A pass that a revision made end too soon is followed as soon as it can be.
    const fromSec = last ? Math.max(endOf(last), last.fromSec, soonestSec) : soonestSec;
    const span = wholeSpan(pass, last ? last.passIndex + 1 : 0, fromSec);
    to.spans = [...spansAfter(to.spans, clock() - REMEMBERED_SEC), span];
    if (!last) instruments.startQuietly(fromSec);
    scheduler.add(noteEvents(dueNotes(span)));
  }

  function end(): void {
    run = undefined;
    scheduler.stop();
    for (const listener of listeners) listener();
  }

  function silence(): void {
    run = undefined;
    scheduler.stop();
    instruments.silence(clock());
  }

  function stop(): void {
    if (run) silence();
  }

  return {
    play(nextPass) {
      // Also where play-back has ended by itself: the last notes may still be dying away.
      silence();
      run = { nextPass, spans: [], isLast: false };
      scheduler.start();
      fetchPass();
      scheduler.handOver();
    },
    revise(revise) {
      scheduler.handOver();
      const revised = run;
      if (!revised) return;
      const waiting = scheduler.waiting().flatMap((e) => (e.kind === 'note' ? [e.due] : []));
      const spans = spansAfter(revised.spans, clock() - REMEMBERED_SEC);
      const plan = revisedPlan({ spans, waiting }, scheduler.horizonSec(), revise);
      if (run !== revised) return;
      revised.spans = plan.spans;
      revised.isLast = false;
      scheduler.replaceWaiting([...noteEvents(plan.waiting), boundary(revised, clock())]);
      scheduler.handOver();
    },
    stop,
    position: () => run && positionAt(run.spans, clock() - room.outputLatencySec()),
    spans: () => run?.spans ?? [],
    onEnd(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    statistics: () => statistics,
    dispose() {
      stop();
      timer.dispose();
    },
  };
}
