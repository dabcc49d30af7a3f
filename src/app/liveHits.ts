import type { PatternId } from '../core/ids.ts';
import type { HitHand } from '../core/practice/expectedHits.ts';
import type { HitMatching } from '../core/practice/matchHits.ts';
import { type Grade, gradeOf } from '../core/practice/tolerance.ts';
import type { Seconds, Ticks } from '../core/time/ticks.ts';
import { scoreTick } from './score.ts';
import type { SoundingPass } from './soundingPass.ts';

/**
 * A hit of the pass that is heard, to be shown where it belongs: `tick` is where it was meant on the
 * score's timeline (where it was played, if it was extra), `patternTick` and `patternId` where in
 * its pattern. `deviationSec` is played − meant, early is negative.
 */
export type LiveHit =
  | {
      readonly kind: 'played';
      readonly hand: HitHand;
      readonly tick: number;
      readonly patternTick?: Ticks;
      readonly patternId?: PatternId;
      readonly deviationSec: Seconds;
      readonly grade: Grade;
      /** Keys that are not in the hit, as far as the input knows keys. */
      readonly wrongKeys: number;
    }
  | {
      readonly kind: 'missed';
      readonly hand: HitHand;
      readonly tick: number;
      readonly patternTick?: Ticks;
      readonly patternId?: PatternId;
    }
  | { readonly kind: 'extra'; readonly hand?: HitHand; readonly tick: number };

/** The hits of a matching as they are shown for a pass; what is missed only counts if it was due before `judgedSec`. */
export function liveHits(
  matching: HitMatching,
  { score, originSec }: SoundingPass,
  judgedSec: Seconds,
): LiveHit[] {
  const tickAt = (sec: Seconds) => scoreTick(score, sec - originSec);
  return [
    ...matching.pairs.map(({ expected, played, deviationSec }): LiveHit => {
      const { hand, patternTick, patternId, keys, gapSec, atSec } = expected;
      const unmeant = played.keys.filter((key) => !keys.includes(key));
      return {
        kind: 'played',
        hand,
        tick: tickAt(atSec),
        ...(patternTick !== undefined && { patternTick }),
        ...(patternId !== undefined && { patternId }),
        deviationSec,
        grade: gradeOf(deviationSec, gapSec),
        wrongKeys: keys.length > 0 ? unmeant.length : 0,
      };
    }),
    ...matching.missed
      .filter((hit) => hit.atSec < judgedSec)
      .map(
        ({ hand, atSec, patternTick, patternId }): LiveHit => ({
          kind: 'missed',
          hand,
          tick: tickAt(atSec),
          ...(patternTick !== undefined && { patternTick }),
          ...(patternId !== undefined && { patternId }),
        }),
      ),
    ...matching.extra
      .filter((hit) => hit.atSec < judgedSec)
      .map(
        ({ hand, atSec }): LiveHit => ({
          kind: 'extra',
          tick: tickAt(atSec),
          ...(hand !== undefined && { hand }),
        }),
      ),
  ];
}
