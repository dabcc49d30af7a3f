import type { KeyNumber } from '../harmony/pitch.ts';
import type { Seconds } from '../time/ticks.ts';
import type { HandName } from '../voicing/voicing.ts';
import type { ExpectedHit } from './expectedHits.ts';
import type { PlayedNote } from './playedHits.ts';

/** What a hand is to play around a note's time: so long before and after. */
const REACH_SEC: Seconds = 0.25;

/**
 * The notes of a keyboard, each with the hand that most likely struck it: the one that has the
 * nearest key to play around that time (at its nearest hit, if it has none within 250 ms). Where
 * both are equally near it is the hand that plays lower there. With one hand expected, all is that
 * hand's; notes that tell their hand, or no key, stay as they are. `expected` ascends, with keys.
 */
export function withHands(
  notes: readonly PlayedNote[],
  expected: readonly ExpectedHit[],
): PlayedNote[] {
  const left = expected.filter((hit) => hit.hand === 'left');
  const right = expected.filter((hit) => hit.hand === 'right');
  return notes.map((note) => {
    const { keyNumber, atSec } = note;
    if (note.hand !== undefined || keyNumber === undefined) return note;
    const hand = handOf(keyNumber, keysAround(left, atSec), keysAround(right, atSec));
    return hand ? { ...note, hand } : note;
  });
}

/** Undefined where neither hand has a key to play. */
function handOf(
  key: KeyNumber,
  leftKeys: readonly KeyNumber[],
  rightKeys: readonly KeyNumber[],
): HandName | undefined {
  const [toLeft, toRight] = [keyDistance(leftKeys, key), keyDistance(rightKeys, key)];
  if (toLeft !== toRight) return toLeft < toRight ? 'left' : 'right';
  if (toLeft === Infinity) return undefined;
  return Math.min(...leftKeys) <= Math.min(...rightKeys) ? 'left' : 'right';
}

/** The keys of the hits within reach of a time, or of the nearest hit. */
function keysAround(hits: readonly ExpectedHit[], atSec: Seconds): readonly KeyNumber[] {
  const from = firstFrom(hits, atSec - REACH_SEC);
  const keys: KeyNumber[] = [];
  for (let i = from; hits[i] && hits[i]!.atSec <= atSec + REACH_SEC; i++)
    keys.push(...hits[i]!.keys);
  if (keys.length > 0) return keys;
  const [before, after] = [hits[from - 1], hits[from]];
  if (!before || !after) return (before ?? after)?.keys ?? [];
  return atSec - before.atSec < after.atSec - atSec ? before.keys : after.keys;
}

/** Place of the first hit at or after a time; the number of hits where there is none. */
function firstFrom(hits: readonly ExpectedHit[], atSec: Seconds): number {
  let [low, high] = [0, hits.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (hits[middle]!.atSec < atSec) low = middle + 1;
    else high = middle;
  }
  return low;
}

function keyDistance(keys: readonly KeyNumber[], key: KeyNumber): number {
  return keys.reduce((nearest, each) => Math.min(nearest, Math.abs(each - key)), Infinity);
}
