import type { Seconds } from '../core/time/ticks.ts';
import { notesToSound } from './notesToSound.ts';
import { type DueNote, dueNotes, endOf, type Pass, type Span, wholeSpan } from './pass.ts';

/**
 * What takes a pass's place while it sounds: the new pass, and the time in it that answers to a
 * time of the old one (the same bar and beat at another tempo; the identity if the tempo stays).
 */
export type Revision<P extends Pass = Pass> = {
  readonly pass: P;
  readonly secondsIn: (oldSec: Seconds) => Seconds;
};

/**
 * Asked for a pass that is not over: what takes its place, or undefined to leave it as it is. What
 * was due before `fixedSec`, a time of the pass, has been handed over already (before its lead-in if
 * it has not begun).
 */
export type Revise<P extends Pass> = (
  pass: P,
  passIndex: number,
  fixedSec: Seconds,
) => Revision<P> | undefined;

/** What is to be played: every span in order of time, and the notes that wait to be handed over. */
export type Plan<P extends Pass> = {
  readonly spans: readonly Span<P>[];
  readonly waiting: readonly DueNote<P>[];
};

/** The span from the horizon on, and which notes of the new pass are still to sound in it. */
function turned<P extends Pass>(
  old: Span<P>,
  { pass, secondsIn }: Revision<P>,
  waiting: readonly DueNote<P>[],
  horizonSec: Seconds,
): Plan<P> {
  const originSec = horizonSec - secondsIn(horizonSec - old.originSec);
  const span = { pass, passIndex: old.passIndex, originSec, fromSec: horizonSec };
  const waitingNotes = new Set(waiting.map((due) => due.note));
  const oldNotes = old.pass.notes.map((note) => ({
    note,
    atSec: originSec + secondsIn(note.startSec),
    span: old,
    isWaiting: waitingNotes.has(note),
  }));
  const before = old.fromSec < horizonSec ? [old] : [];
  return { spans: [...before, span], waiting: notesToSound(oldNotes, dueNotes(span), horizonSec) };
}

/**
 * The plan with every pass that is not over at the horizon replaced: the one that sounds then from
 * there on, by its revision; one that begins later as a whole, at the end of the one before it.
 * `revise` gives undefined to leave a pass as it is. Nothing due before `horizonSec` waits any more.
 */
export function revisedPlan<P extends Pass>(
  { spans, waiting }: Plan<P>,
  horizonSec: Seconds,
  revise: Revise<P>,
): Plan<P> {
  let plan: Plan<P> = { spans: [], waiting: [] };
  for (const [i, old] of spans.entries()) {
    const ownWaiting = waiting.filter((due) => due.span === old);
    const isOver = (spans[i + 1]?.fromSec ?? endOf(old)) <= horizonSec;
    const revision = isOver
      ? undefined
      : revise(old.pass, old.passIndex, horizonSec - old.originSec);
    const part =
      old.fromSec > horizonSec
        ? later(old, revision?.pass ?? old.pass, plan.spans.at(-1), horizonSec)
        : revision
          ? turned(old, revision, ownWaiting, horizonSec)
          : { spans: [old], waiting: ownWaiting };
    plan = {
      spans: [...plan.spans, ...part.spans],
      waiting: [...plan.waiting, ...part.waiting],
    };
  }
  return plan;
}

/** The whole of a pass that has not begun, moved to where the one before it now ends. */
function later<P extends Pass>(
  old: Span<P>,
  pass: P,
  before: Span<P> | undefined,
  horizonSec: Seconds,
): Plan<P> {
  const fromSec = before ? Math.max(endOf(before), horizonSec) : old.fromSec;
  const span = wholeSpan(pass, old.passIndex, fromSec);
  return { spans: [span], waiting: dueNotes(span) };
}
