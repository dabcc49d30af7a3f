import type { KeyNumber } from '../harmony/pitch.ts';
import type { Seconds } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';

/** One thing that an input noticed, on the clock of the expected hits, with what it could tell. `velocity` is MIDI's. */
export type PlayedNote = {
  readonly atSec: Seconds;
  readonly hand?: HandName;
  readonly keyNumber?: KeyNumber;
  readonly velocity?: number;
};

/** One attack of a hand: one note or a chord. `keys` ascend, empty where they are not known. */
export type PlayedHit = {
  readonly atSec: Seconds;
  readonly hand?: HandName;
  readonly keys: readonly KeyNumber[];
};

/** Notes of a chord that a hand means together start within so much of the first (common practice; rolled chords included). */
export const CHORD_SPREAD_SEC: Seconds = 0.06;

/**
 * The hits that played notes make, ascending by time: notes of one hand (or all of those whose hand
 * is not known) that start within `spreadSec` of the first are one struck or rolled chord, at the
 * time of its first note. A key struck again, and every note without a key, is a hit of its own.
 * `notes` in any order; each is in exactly one hit.
 */
export function gatherChords(
  notes: readonly PlayedNote[],
  spreadSec: Seconds = CHORD_SPREAD_SEC,
): PlayedHit[] {
  const open = new Map<HandName | undefined, number>();
  const hits: PlayedHit[] = [];
  for (const note of notes.toSorted((a, b) => a.atSec - b.atSec)) {
    const place = open.get(note.hand);
    const hit = place === undefined ? undefined : hits[place];
    if (place !== undefined && hit && belongsTo(hit, note, spreadSec)) {
      hits[place] = { ...hit, keys: withKey(hit.keys, note.keyNumber) };
    } else {
      open.set(note.hand, hits.length);
      hits.push(hitOf(note));
    }
  }
  return hits;
}

function belongsTo(hit: PlayedHit, note: PlayedNote, spreadSec: Seconds): boolean {
  if (note.keyNumber === undefined || hit.keys.length === 0) return false;
  return note.atSec - hit.atSec <= spreadSec && !hit.keys.includes(note.keyNumber);
}

function withKey(keys: readonly KeyNumber[], key: KeyNumber | undefined): readonly KeyNumber[] {
  return key === undefined ? keys : [...keys, key].toSorted((a, b) => a - b);
}

function hitOf({ atSec, hand, keyNumber }: PlayedNote): PlayedHit {
  return {
    atSec,
    ...(hand === undefined ? {} : { hand }),
    keys: keyNumber === undefined ? [] : [keyNumber],
  };
}
