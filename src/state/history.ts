/** A past or future state, and the name of the change between it and the state after it. */
export type HistoryEntry<T> = { readonly value: T; readonly label: string };

/**
 * States in order. `past` is oldest first; each entry's label names the change made to it. `future`
 * is what undo took back, next to redo last; each entry's label names the change that led to it.
 * `gesture` is the gesture of the latest change while it can still grow.
 */
export type History<T> = {
  readonly past: readonly HistoryEntry<T>[];
  readonly present: T;
  readonly future: readonly HistoryEntry<T>[];
  readonly gesture?: string;
};

/** What a change is called (“move hit”), and the gesture it is a part of: a drag, a run of typing. */
export type Change = { readonly label: string; readonly gesture?: string };

/** So many changes can be undone; older ones are forgotten. */
export const HISTORY_LIMIT = 500;

/** A history that begins now: nothing to undo, nothing to redo. */
export function historyFrom<T>(present: T): History<T> {
  return { past: [], present, future: [] };
}

/**
 * The history after a change to `present`; what could be redone is forgotten. Changes in a row of
 * one gesture are one entry, named as the first of them, and none where they lead back to the very
 * state the gesture began with; an undo, a redo or `gestureEnded` in between ends a gesture.
 * A `present` that is the very same as before gives the very same history.
 */
export function record<T>(history: History<T>, present: T, change: Change): History<T> {
  if (present === history.present) return history;
  const { label, gesture } = change;
  const goesOn = gesture !== undefined && gesture === history.gesture;
  if (goesOn && present === history.past.at(-1)?.value)
    return { past: history.past.slice(0, -1), present, future: [] };
  const past = goesOn
    ? history.past
    : [...history.past, { value: history.present, label }].slice(-HISTORY_LIMIT);
  return { past, present, future: [], ...(gesture === undefined ? {} : { gesture }) };
}

/** The same history, in which the next change begins an entry of its own, whatever its gesture. */
export function gestureEnded<T>(history: History<T>): History<T> {
  const { gesture: _, ...rest } = history;
  return rest;
}

/** The history one change back; the very same where there is nothing to undo. */
export function undo<T>(history: History<T>): History<T> {
  const last = history.past.at(-1);
  if (!last) return history;
  return {
    past: history.past.slice(0, -1),
    present: last.value,
    future: [...history.future, { value: history.present, label: last.label }],
  };
}

/** The history one undone change forward; the very same where there is nothing to redo. */
export function redo<T>(history: History<T>): History<T> {
  const next = history.future.at(-1);
  if (!next) return history;
  return {
    past: [...history.past, { value: history.present, label: next.label }],
    present: next.value,
    future: history.future.slice(0, -1),
  };
}
