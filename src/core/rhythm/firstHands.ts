import type { Bpm } from '../time/tempoMap.ts';
import type { HandName } from '../voicing/voicing.ts';
import type { Groove } from './foldSources.ts';
import { HAND_LIMITS, type HandLimits } from './handLimits.ts';
import { HAND_RULES, type HandFeed, type HandRules } from './handRules.ts';
import { deriveHands, raisedFeeds } from './hands.ts';
import type { Level } from './levels.ts';
import type { Hands, Hit } from './pattern.ts';
import { leavesTheOne } from './theOne.ts';
import { thinHands } from './thin.ts';

/** The level of what is proposed first: all that the hands can do at the tempo, and nothing beyond. */
const FIRST_LEVEL: Level = 5;

/**
 * What a band gives two hands. `hands`: the most important hits of `fuller` that can be played at the band's
 * tempo; `leftOut`: the others; `raised`: parts that were to add only accents, played by their strong
 * strokes as their hand would be empty; `leavesTheOne`: the band itself leaves the one empty, and so
 * does the left hand.
 */
export type FirstHands = {
  readonly hands: Hands;
  readonly fuller: Hands;
  readonly leftOut: Hands;
  readonly raised: readonly HandFeed[];
  readonly leavesTheOne: boolean;
};

/**
 * Both hands as a pianist could play them tonight: derived by the rules (`deriveHands`), then thinned
 * (`thinHands`) to what the player's hands do at the band's tempo, in felt beats a minute.
 */
export function firstHands(
  groove: Groove,
  bpm: Bpm,
  rules: HandRules = HAND_RULES,
  limits: HandLimits = HAND_LIMITS,
): FirstHands {
  const fuller = deriveHands(groove.sources, rules, groove);
  const hands = thinHands(fuller, FIRST_LEVEL, bpm, groove, limits);
  const left = (hand: HandName) =>
    (fuller[hand] as readonly Hit[]).filter(
      (hit) => !(hands[hand] as readonly Hit[]).includes(hit),
    );
  return {
    hands,
    fuller,
    leftOut: { left: left('left'), right: left('right') } as Hands,
    raised: raisedFeeds(groove.sources, rules),
    leavesTheOne: leavesTheOne(groove.sources, groove),
  };
}
