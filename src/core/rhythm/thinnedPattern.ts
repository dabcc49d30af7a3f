import type { Bpm } from '../time/tempoMap.ts';
import { HAND_LIMITS, type HandLimits } from './handLimits.ts';
import type { Level } from './levels.ts';
import { endingBar, type Pattern } from './pattern.ts';
import { thinHands } from './thin.ts';

/**
 * What a level leaves of a pattern, and of its ending, at a tempo in felt beats of its meter: see
 * `thinHands`. The ending is thinned by itself, as a bar without the band. `limits`: what the player's
 * hands do.
 */
export function thinnedPattern(
  pattern: Pattern,
  level: Level,
  bpm: Bpm,
  limits: HandLimits = HAND_LIMITS,
): Pattern {
  const { ending } = pattern;
  const lastBar = endingBar(pattern);
  return {
    ...pattern,
    ...thinHands(pattern, level, bpm, pattern, limits),
    ...(ending && lastBar
      ? { ending: { ...ending, ...thinHands(ending, level, bpm, lastBar, limits) } }
      : {}),
  };
}
