import type { HitHand } from '../../../core/practice/expectedHits.ts';
import type { TakeRecord } from '../../../core/practice/takeRecord.ts';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import type { StorageError } from '../../../state/storage.ts';

export const HAND_WORDS: Readonly<Record<HitHand, string>> = {
  left: 'left hand',
  right: 'right hand',
  both: 'both hands',
};

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}

/** The date of a moment where the player is, as an ISO 8601 date. */
export function localDay(atMs: number): string {
  const at = new Date(atMs);
  return `${at.getFullYear()}-${twoDigits(at.getMonth() + 1)}-${twoDigits(at.getDate())}`;
}

/** How many minutes the player's clock was ahead of UTC at a moment. */
export function aheadOfUtcMinutes(atMs: number): number {
  return 0 - new Date(atMs).getTimezoneOffset();
}

const SHORT_DAY = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  timeZone: 'UTC',
});

const LONG_DAY = new Intl.DateTimeFormat('en-GB', {
  weekday: 'long',
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
});

/** An ISO 8601 date under a plot: “3 Mar”. */
export function shortDay(day: string): string {
  return SHORT_DAY.format(Date.parse(day));
}

/** An ISO 8601 date over its takes: “Tuesday, 3 March 2026”. */
export function longDay(day: string): string {
  return LONG_DAY.format(Date.parse(day));
}

const TIME = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });

/** The time of day of a moment where the player is: “17:05”. */
export function timeOfDay(atMs: number): string {
  return TIME.format(atMs);
}

/** A tempo as a metronome shows it. */
export function bpmWords(bpm: Bpm): string {
  return String(Math.round(bpm));
}

/** With which hand, and at which level where that is not all: “both hands, level 2”. */
export function partWords({ hand, level }: Pick<TakeRecord, 'hand' | 'level'>): string {
  return level === undefined ? HAND_WORDS[hand] : `${HAND_WORDS[hand]}, level ${level}`;
}

function timesWords(passes: number): string[] {
  if (passes === 0) return ['broken off'];
  if (passes === 1) return [];
  return [passes === 2 ? 'twice through' : `${passes} times through`];
}

/** How a take was, in a few words: “clean, 4 times through”, “not clean: 3 of 24 left out, 2 too many”. */
export function howWords({ score, passes }: Pick<TakeRecord, 'score' | 'passes'>): string {
  const missed = score.expected - score.matched;
  const extra = score.played - score.matched;
  const wrong = score.keys?.wrongHits ?? 0;
  const off = score.grades.off;
  if (score.clean) return ['clean', ...timesWords(passes)].join(', ');
  const faults = [
    ...(missed > 0 ? [`${missed} of ${score.expected} left out`] : []),
    ...(off > 0 ? [`${off} out of time`] : []),
    ...(extra > 0 ? [`${extra} too many`] : []),
    ...(wrong > 0 ? [`${wrong} with a wrong note`] : []),
    ...timesWords(passes),
  ];
  return faults.length === 0 ? 'not clean' : `not clean: ${faults.join(', ')}`;
}

/** Why takes do not outlast this visit. */
export function notKeptSentence({ kind }: StorageError): string {
  switch (kind) {
    case 'unavailable':
      return 'This browser keeps nothing for this page (a private window?). What you play counts until the page is closed.';
    case 'full':
      return 'No room is left on this device for what you play. It counts until the page is closed.';
    default:
      return 'What you play could not be kept on this device. It counts until the page is closed.';
  }
}
