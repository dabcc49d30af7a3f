import type { KeyNumber } from '../harmony/pitch.ts';
import type { PatternId } from '../ids.ts';
import type { TimedNote } from '../rhythm/note.ts';
import type { Seconds, Ticks } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';

/**
 * What an input can tell about a hit beside its time: a keyboard which keys (and so which hand), two
 * keys or pads only the hand, a microphone nothing.
 */
export type InputSees = 'keys' | 'hands' | 'onsets';

/** A hit's hand, or `both` where the input cannot tell the hands apart and both strike. */
export type HitHand = HandName | 'both';

/**
 * A hit that the player is to play, as the input will see it. `keys` ascend and are empty where the
 * input does not see them. `gapSec` is how far the nearest other hit is, for the tolerance.
 */
export type ExpectedHit = {
  readonly atSec: Seconds;
  readonly hand: HitHand;
  readonly keys: readonly KeyNumber[];
  readonly gapSec: Seconds;
  readonly patternTick?: Ticks;
  /** Which pattern `patternTick` counts in, where music has several; set by who knows it. */
  readonly patternId?: PatternId;
};

/** Two attacks closer than this are one sound to a microphone's onset detection (and nearly to the ear). */
export const UNRESOLVED_SEC: Seconds = 0.03;

/** With hits farther apart than this, and no beat given, tolerance grows no further. */
const LONGEST_GAP_SEC: Seconds = 1;

type HandHit = Omit<ExpectedHit, 'gapSec'>;

/**
 * The hits of both hands that notes ask for, ascending by time (the left hand first where both
 * strike): all notes of one hand that start together are one hit. What `sees` cannot tell apart is
 * merged: without hands, hits closer than `UNRESOLVED_SEC` become one, at the time of the first.
 * Parts that are not hands ask for nothing. `beatSec`, where given, is the longest gap that counts
 * for the tolerance, since the beat is felt (or clicks) between hits that are farther apart.
 */
export function expectedHits(
  notes: readonly TimedNote[],
  sees: InputSees,
  beatSec: Seconds = LONGEST_GAP_SEC,
): ExpectedHit[] {
  const hits = [...handHits(notes, 'left'), ...handHits(notes, 'right')].toSorted(
    (a, b) => a.atSec - b.atSec,
  );
  return withGaps(seenHits(hits, sees), beatSec);
}

function handHits(notes: readonly TimedNote[], hand: HandName): HandHit[] {
  const byTime = new Map<Seconds, HandHit>();
  for (const { part, startSec: atSec, keyNumber, patternTick } of notes) {
    if (part !== hand) continue;
    const hit = byTime.get(atSec) ?? {
      atSec,
      hand,
      keys: [],
      ...(patternTick === undefined ? {} : { patternTick }),
    };
    byTime.set(atSec, { ...hit, keys: ascending([...hit.keys, keyNumber]) });
  }
  return [...byTime.values()];
}

function seenHits(hits: readonly HandHit[], sees: InputSees): HandHit[] {
  if (sees === 'keys') return [...hits];
  const keyless = hits.map((hit) => ({ ...hit, keys: [] }));
  return sees === 'hands' ? keyless : merged(keyless);
}

function merged(hits: readonly HandHit[]): HandHit[] {
  const sounds: HandHit[] = [];
  for (const hit of hits) {
    const last = sounds.at(-1);
    if (!last || hit.atSec - last.atSec >= UNRESOLVED_SEC) sounds.push(hit);
    else if (last.hand !== hit.hand) sounds[sounds.length - 1] = { ...last, hand: 'both' };
  }
  return sounds;
}

/** Hits of both hands at one time are no gap: the nearest hit that is heard as another counts. */
function withGaps(hits: readonly HandHit[], beatSec: Seconds): ExpectedHit[] {
  return hits.map((hit, i) => ({
    ...hit,
    gapSec: Math.min(beatSec, gapTowards(hits, i, -1), gapTowards(hits, i, 1)),
  }));
}

function gapTowards(hits: readonly HandHit[], from: number, direction: 1 | -1): Seconds {
  for (let i = from + direction; hits[i]; i += direction) {
    const gap = Math.abs(hits[i]!.atSec - hits[from]!.atSec);
    if (gap >= UNRESOLVED_SEC) return gap;
  }
  return Number.POSITIVE_INFINITY;
}

function ascending(keys: readonly KeyNumber[]): KeyNumber[] {
  return [...new Set(keys)].toSorted((a, b) => a - b);
}
