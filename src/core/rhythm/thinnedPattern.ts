import type { Bpm } from '../time/tempoMap.ts';
import type { Level } from './levels.ts';
import { lastBarDivisions, type Pattern } from './pattern.ts';
import { thinHands } from './thin.ts';

/**
 * What a level leaves of a pattern, and of its ending, at a tempo in felt beats of its meter: see
 * `thinHands`. The ending is thinned by itself, as a bar without the band.
 */
export function thinnedPattern(pattern: Pattern, level: Level, bpm: Bpm): Pattern {
  const { ending, meter, swing } = pattern;
  const lastBar = { meter, swing, bars: 1, divisions: lastBarDivisions(pattern) };
  return {
    ...pattern,
    ...thinHands(pattern, level, bpm, pattern),
    ...(ending ? { ending: thinHands(ending, level, bpm, lastBar) } : {}),
  };
}
