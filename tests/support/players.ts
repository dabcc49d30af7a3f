import type { ExpectedHit } from '../../src/core/practice/expectedHits.ts';
import type { PlayedHit } from '../../src/core/practice/playedHits.ts';
import type { Random } from './random.ts';

/** How somebody plays. Times in seconds, shares 0 to 1; both hands alike unless `rightSpreadSec` differs. */
export type PlayerTraits = {
  readonly offsetSec: number;
  readonly spreadSec: number;
  readonly rightSpreadSec?: number;
  readonly misses: number;
  readonly extras: number;
  /** The tempo grows evenly by this share from the first hit to the last. */
  readonly drift: number;
};

/** A played hit and the expected one it answers; none for an extra hit. */
export type TrueHit = { readonly played: PlayedHit; readonly answers?: ExpectedHit };

/** Where a player who drifts plays what is expected at a time, before offset and unevenness. */
export function driftedSec(sec: number, lengthSec: number, drift: number): number {
  return sec * (1 - (drift * sec) / (2 * lengthSec));
}

/**
 * What such a player plays of expected hits (which begin near second 0). An extra hit lies at least
 * `clearSec` from all that the hand means: nearer than that nobody could say which hit was meant.
 */
export function playHits(
  expected: readonly ExpectedHit[],
  traits: PlayerTraits,
  random: Random,
  clearSec = 0.1,
): TrueHit[] {
  const lengthSec = expected.at(-1)!.atSec;
  const hits: TrueHit[] = [];
  for (const hand of ['left', 'right'] as const) {
    const own = expected.filter((hit) => hit.hand === hand);
    const spread =
      hand === 'right' ? (traits.rightSpreadSec ?? traits.spreadSec) : traits.spreadSec;
    const places = own.map(
      (hit) => driftedSec(hit.atSec, lengthSec, traits.drift) + traits.offsetSec,
    );
    own.forEach((hit, i) => {
      if (random.uniform() < traits.misses) return;
      const atSec = places[i]! + spread * random.normal();
      hits.push({ played: { atSec, hand, keys: hit.keys }, answers: hit });
    });
    for (let i = 0; i < own.length; i++) {
      if (random.uniform() >= traits.extras) continue;
      const atSec = random.uniform() * places.at(-1)!;
      if (places.every((place) => Math.abs(place - atSec) >= clearSec))
        hits.push({ played: { atSec, hand, keys: [60] } });
    }
  }
  return hits.toSorted((a, b) => a.played.atSec - b.played.atSec);
}
