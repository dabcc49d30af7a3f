import type { TimedNote } from '../core/rhythm/note.ts';
import type { Seconds } from '../core/time/ticks.ts';

/**
 * One time through what is played. `notes` in any order, timed from the pass's start; those of a
 * count-in have negative times, down to −`leadInSec` (or a little before, for a word that is heard
 * there). The pass takes `leadInSec` (0 or more) and then `lengthSec` (more than 0); a note may sound
 * on beyond that.
 */
export type Pass = {
  readonly notes: readonly TimedNote[];
  readonly leadInSec: Seconds;
  readonly lengthSec: Seconds;
};

/**
 * A stretch of play-back that one pass fills: from `fromSec` until the next span begins. The pass's
 * time 0 stands at `originSec`; both are times of the clock. A pass that was revised while it
 * sounded fills several spans with one `passIndex` (counted from 0 at the start of play-back).
 */
export type Span<P extends Pass = Pass> = {
  readonly pass: P;
  readonly passIndex: number;
  readonly originSec: Seconds;
  readonly fromSec: Seconds;
};

/** The span of a whole pass, lead-in and all, that begins at `fromSec`. */
export function wholeSpan<P extends Pass>(pass: P, passIndex: number, fromSec: Seconds): Span<P> {
  if (!(pass.lengthSec > 0)) throw new Error(`a pass must last, not ${pass.lengthSec} s`);
  if (!(pass.leadInSec >= 0)) throw new Error(`a lead-in of ${pass.leadInSec} s`);
  return { pass, passIndex, originSec: fromSec + pass.leadInSec, fromSec };
}

/** When the pass of a span is over. */
export function endOf(span: Span): Seconds {
  return span.originSec + span.pass.lengthSec;
}

/** The last span, and those before it that are not over by a time of the clock: the next one has begun, or the pass has ended. */
export function spansAfter<P extends Pass>(
  spans: readonly Span<P>[],
  sec: Seconds,
): readonly Span<P>[] {
  return spans.filter((_, i) => {
    const next = spans[i + 1];
    return !next || next.fromSec > sec;
  });
}

/** Where play-back is: `sec` counts from the pass's start, from −`leadInSec` to `lengthSec`. */
export type Position<P extends Pass = Pass> = {
  readonly pass: P;
  readonly passIndex: number;
  readonly sec: Seconds;
};

/** The position at a time of the clock; the first span's beginning before it, undefined without spans. */
export function positionAt<P extends Pass>(
  spans: readonly Span<P>[],
  atSec: Seconds,
): Position<P> | undefined {
  const span = spans.findLast(({ fromSec }) => fromSec <= atSec) ?? spans[0];
  if (!span) return undefined;
  const { pass, passIndex, originSec } = span;
  const sec = Math.min(Math.max(atSec - originSec, -pass.leadInSec), pass.lengthSec);
  return { pass, passIndex, sec };
}

/** A note and the time of the clock at which it is due. */
export type DueNote<P extends Pass = Pass> = {
  readonly note: TimedNote;
  readonly atSec: Seconds;
  readonly span: Span<P>;
};

/** All notes of a span's pass with the times at which they are due. */
export function dueNotes<P extends Pass>(span: Span<P>): DueNote<P>[] {
  return span.pass.notes.map((note) => ({ note, atSec: span.originSec + note.startSec, span }));
}
