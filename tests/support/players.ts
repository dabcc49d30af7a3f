import type { ExpectedHit } from '../../src/core/practice/expectedHits.ts';
import type { PlayedHit, PlayedNote } from '../../src/core/practice/playedHits.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import type { HandName } from '../../src/core/voicing/voicing.ts';
import type { Random } from './random.ts';
import { timedNote } from './sound.ts';

/** How somebody plays. Times in seconds, shares 0 to 1. */
export type PlayerTraits = {
  readonly offsetSec: number;
  readonly spreadSec: Readonly<Record<HandName, number>>;
  readonly misses: number;
  readonly extras: number;
  /** The tempo grows evenly by this share from the first hit to the last. */
  readonly drift: number;
};

/** A played hit, the expected one that it answers (none for an extra hit), and how far it lies off the player's course. */
export type TrueHit = {
  readonly played: PlayedHit;
  readonly answers?: ExpectedHit;
  readonly unevenSec: number;
};

/**
 * Extra hits lie at least so far from all that the hand means: nearer, nobody could say which of two
 * hits was the extra one, or whether one hit was missed and another played or one played late.
 */
const CLEAR_SEC = 0.18;

/** What such a player plays of expected hits that begin at second 0, each hand ascending. */
export function playHits(
  expected: readonly ExpectedHit[],
  traits: PlayerTraits,
  random: Random,
): TrueHit[] {
  const lengthSec = expected.at(-1)!.atSec;
  const courseOf = ({ atSec }: ExpectedHit) =>
    atSec * (1 - (traits.drift * atSec) / (2 * lengthSec)) + traits.offsetSec;
  return (['left', 'right'] as const).flatMap((hand) => {
    const own = expected.filter((hit) => hit.hand === hand);
    const places = own.map(courseOf);
    const meant = own
      .map((hit, i): TrueHit => {
        const unevenSec = traits.spreadSec[hand] * random.normal();
        const played = { atSec: places[i]! + unevenSec, hand, keys: hit.keys };
        return { played, answers: hit, unevenSec };
      })
      .filter(() => random.uniform() >= traits.misses);
    const extra = own
      .filter(() => random.uniform() < traits.extras)
      .map(() => random.uniform() * places.at(-1)!)
      .filter((atSec) => places.every((place) => Math.abs(place - atSec) >= CLEAR_SEC))
      .map((atSec): TrueHit => ({ played: { atSec, hand, keys: [60] }, unevenSec: 0 }));
    return [...meant, ...extra].toSorted((a, b) => a.played.atSec - b.played.atSec);
  });
}

/** The notes of a hit, rolled upwards over at most `rollSec`. */
export function rolled({ atSec, hand, keys }: PlayedHit, rollSec: number): PlayedNote[] {
  return keys.map((keyNumber, i) => ({
    atSec: atSec + (rollSec * i) / Math.max(keys.length - 1, 1),
    ...(hand && { hand }),
    keyNumber,
  }));
}

/** So many bars of 4/4: the left hand on 1, 2 &, 3 and 4 &, chords in the right on 1, 2, 2 &, 3 & and 4. */
export function grooveNotes(bpm: number, bars: number): TimedNote[] {
  const eighthSec = 30 / bpm;
  return Array.from({ length: bars }, (_, bar) => {
    const note = (hand: HandName, eighth: number, keyNumber: number) =>
      timedNote(hand, (bar * 8 + eighth) * eighthSec, { keyNumber, patternTick: eighth * 240 });
    return [
      ...[0, 3, 4, 7].map((eighth) => note('left', eighth, 40)),
      ...[0, 2, 3, 5, 6].flatMap((eighth) => [60, 64, 67].map((key) => note('right', eighth, key))),
    ];
  }).flat();
}
