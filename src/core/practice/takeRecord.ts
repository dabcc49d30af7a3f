import type { PatternId, SectionId } from '../ids.ts';
import { unreachable } from '../result.ts';
import type { Bpm } from '../time/tempoMap.ts';
import type { HitHand, InputSees } from './expectedHits.ts';
import type { TakeScore } from './takeScore.ts';

/** What can be practised: a pattern on one chord, a section, the join of two sections, the song. */
export type PracticeTarget =
  | { readonly kind: 'pattern'; readonly patternId: PatternId }
  | { readonly kind: 'section'; readonly sectionId: SectionId }
  | { readonly kind: 'join'; readonly from: SectionId; readonly to: SectionId }
  | { readonly kind: 'song' };

/** A take as it is kept: when (milliseconds since 1970), of what, with which hand, how fast, how heard and how well. */
export type TakeRecord = {
  readonly atMs: number;
  readonly target: PracticeTarget;
  readonly hand: HitHand;
  readonly bpm: Bpm;
  readonly sees: InputSees;
  readonly score: TakeScore;
};

/** Whether two targets are the same thing to practise. */
export function sameTarget(one: PracticeTarget, other: PracticeTarget): boolean {
  switch (one.kind) {
    case 'pattern':
      return other.kind === 'pattern' && one.patternId === other.patternId;
    case 'section':
      return other.kind === 'section' && one.sectionId === other.sectionId;
    case 'join':
      return other.kind === 'join' && one.from === other.from && one.to === other.to;
    case 'song':
      return other.kind === 'song';
    default:
      return unreachable(one);
  }
}

/** The fastest tempo at which a target was played clean with both hands; undefined if it never was. */
export function cleanBpm(history: readonly TakeRecord[], target: PracticeTarget): Bpm | undefined {
  const clean = history.filter(
    (take) => take.hand === 'both' && take.score.clean && sameTarget(take.target, target),
  );
  return clean.length === 0 ? undefined : Math.max(...clean.map((take) => take.bpm));
}
