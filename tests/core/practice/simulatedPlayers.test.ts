import { describe, expect, it } from 'vitest';
import { deviationsOf } from '../../../src/core/practice/deviations.ts';
import { expectedHits } from '../../../src/core/practice/expectedHits.ts';
import { matchTake } from '../../../src/core/practice/matchTake.ts';
import { gatherChords } from '../../../src/core/practice/playedHits.ts';
import { scoreTake, type TakeScore } from '../../../src/core/practice/takeScore.ts';
import { grooveNotes, type PlayerTraits, playHits, rolled } from '../../support/players.ts';
import { seededRandom } from '../../support/random.ts';

const OFFSETS_SEC = [-0.06, 0.01, 0.06];
const SPREADS_SEC = [
  { left: 0.005, right: 0.005 },
  { left: 0.04, right: 0.015 },
  { left: 0.025, right: 0.04 },
];
const FAULTS = [
  { misses: 0, extras: 0 },
  { misses: 0.15, extras: 0 },
  { misses: 0, extras: 0.15 },
  { misses: 0.05, extras: 0.05 },
  { misses: 0.15, extras: 0.15 },
];
const DRIFTS = [-0.03, 0, 0.03];

const PLAYERS: PlayerTraits[] = OFFSETS_SEC.flatMap((offsetSec) =>
  SPREADS_SEC.flatMap((spreadSec) =>
    FAULTS.flatMap((faults) => DRIFTS.map((drift) => ({ offsetSec, spreadSec, ...faults, drift }))),
  ),
);

const HANDS = ['left', 'right'] as const;

function handOf({ hands }: TakeScore, hand: string) {
  return hands.find((each) => each.hand === hand)!;
}

/** How a take was matched and scored, beside the truth. */
function judged(traits: PlayerTraits, seed: number, bars = 48) {
  const random = seededRandom(seed);
  const expected = expectedHits(grooveNotes([80, 100, 120][seed % 3]!, bars), 'keys');
  const truth = playHits(expected, traits, random);
  const notes = truth.flatMap(({ played }) => rolled(played, 0.04 * random.uniform()));
  const played = gatherChords(notes);
  const matching = matchTake(expected, played);

  const answers = new Map(
    truth.map(({ played: hit, answers: meant }) => [`${hit.hand} ${hit.atSec}`, meant]),
  );
  const right = matching.pairs.filter(
    (pair) => answers.get(`${pair.played.hand} ${pair.played.atSec}`) === pair.expected,
  );
  const answered = truth.filter((hit) => hit.answers);
  const matched = new Set(right.map((pair) => pair.expected));
  const trueHits = answered.filter((hit) => matched.has(hit.answers!));
  return {
    f: (2 * right.length) / (matching.pairs.length + answered.length),
    score: scoreTake(matching),
    trueMeanMs: deviationsOf(trueHits.map((hit) => hit.played.atSec - hit.answers!.atSec)).meanMs!,
    trueMean: (hand: string) => {
      const own = trueHits.filter((hit) => hit.played.hand === hand);
      return deviationsOf(own.map((hit) => hit.played.atSec - hit.answers!.atSec)).meanMs!;
    },
    trueUnevenness: (hand: string) =>
      deviationsOf(trueHits.filter((hit) => hit.played.hand === hand).map((hit) => hit.unevenSec))
        .spreadMs!,
  };
}

describe('players with known faults', () => {
  const takes = PLAYERS.map((traits, i) => ({ traits, ...judged(traits, i + 1) }));

  it('are matched with F of at least 0.99, every one of them', () =>
    expect(
      takes.filter((take) => !(take.f >= 0.99)).map(({ traits, f }) => ({ traits, f })),
    ).toEqual([]));

  it('have their lateness told within 1 ms', () =>
    expect(
      takes.filter((take) => !(Math.abs(take.score.all.meanMs! - take.trueMeanMs) <= 1)),
    ).toEqual([]));

  it('have the lateness of each hand told within 1 ms', () =>
    expect(
      takes.flatMap((take) =>
        HANDS.map((hand) => handOf(take.score, hand).meanMs! - take.trueMean(hand)).filter(
          (error) => !(Math.abs(error) <= 1),
        ),
      ),
    ).toEqual([]));

  it('have the unevenness of each hand told within 5 per cent, whatever their drift', () =>
    expect(
      takes.flatMap((take) =>
        HANDS.map((hand) => handOf(take.score, hand).unevennessMs! / take.trueUnevenness(hand))
          .filter((ratio) => !(Math.abs(ratio - 1) <= 0.05))
          .map((ratio) => ({ ...take.traits, ratio })),
      ),
    ).toEqual([]));

  it('have a drift told that is there, and hardly ever one that is not', () => {
    const wrong = takes.filter(({ traits, score }) => {
      const gain = score.drift?.gainPercent ?? 0;
      // The tempo at a time is 1 / (1 − drift · time / length) of the one asked for.
      const trueGain = 100 * (1 / (1 - traits.drift) - 1);
      return Math.abs(gain - trueGain) > 0.5;
    });
    expect(wrong).toEqual([]);
  });
});

describe('short takes at a steady tempo', () => {
  const STEADY = PLAYERS.filter(({ drift }) => drift === 0);
  const takes = STEADY.map((traits, i) => judged(traits, i + 500, [4, 8][i % 2]));

  it('are matched and told as exactly as long ones', () =>
    expect(
      takes.filter(
        (take) =>
          !(take.f >= 0.99) ||
          HANDS.some((hand) => {
            const { meanMs, unevennessMs } = handOf(take.score, hand);
            const ratio = unevennessMs! / take.trueUnevenness(hand);
            return !(Math.abs(meanMs! - take.trueMean(hand)) <= 1 && Math.abs(ratio - 1) <= 0.05);
          }),
      ),
    ).toEqual([]));
});
