import type { PatternId, SectionId } from '../ids.ts';
import { unreachable } from '../result.ts';
import type { Level } from '../rhythm/levels.ts';
import type { Bpm } from '../time/tempoMap.ts';
import type { HitHand, InputSees } from './expectedHits.ts';
import type { TakeScore } from './takeScore.ts';

/**
 * What can be practised: a pattern by itself, a section, the join of two sections, the song, or other
 * bars of it (by their place in playing order as it was then, from 0, the end exclusive).
 */
export type PracticeTarget =
  | { readonly kind: 'pattern'; readonly patternId: PatternId }
  | { readonly kind: 'section'; readonly sectionId: SectionId }
  | { readonly kind: 'join'; readonly from: SectionId; readonly to: SectionId }
  | { readonly kind: 'song' }
  | { readonly kind: 'bars'; readonly firstBar: number; readonly endBar: number };

/**
 * A take as it is kept: when it began (milliseconds since 1970), of what, with which hand, how fast,
 * at which level (everything without), how often it was played through (0: it was broken off), how
 * heard and how well.
 */
export type TakeRecord = {
  readonly atMs: number;
  readonly target: PracticeTarget;
  readonly hand: HitHand;
  readonly bpm: Bpm;
  readonly level?: Level;
  readonly passes: number;
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
    case 'bars':
      return (
        other.kind === 'bars' && one.firstBar === other.firstBar && one.endBar === other.endBar
      );
    default:
      return unreachable(one);
  }
}

/** A take with another id in place of one, wherever its pattern or section is named; the very same where it is not. */
export function withOtherId(take: TakeRecord, id: string, other: string): TakeRecord {
  const target = targetWithOtherId(take.target, id, other);
  const hasStep = take.score.steps.some((step) => step.patternId === id);
  if (target === take.target && !hasStep) return take;
  const steps = take.score.steps.map((step) =>
    step.patternId === id ? { ...step, patternId: other } : step,
  );
  return { ...take, target, score: { ...take.score, steps } };
}

function targetWithOtherId(target: PracticeTarget, id: string, other: string): PracticeTarget {
  const renamed = (each: string) => (each === id ? other : each);
  switch (target.kind) {
    case 'pattern':
      return target.patternId === id ? { ...target, patternId: other } : target;
    case 'section':
      return target.sectionId === id ? { ...target, sectionId: other } : target;
    case 'join':
      return target.from === id || target.to === id
        ? { ...target, from: renamed(target.from), to: renamed(target.to) }
        : target;
    default:
      return target;
  }
}

/** Whether a take shows that its tempo was reached: clean, both hands, the whole part, played through. */
export function reachesTempo({ hand, level, passes, score }: TakeRecord): boolean {
  return score.clean && hand === 'both' && level === undefined && passes > 0;
}

/** The fastest tempo of some takes that was reached; undefined where none was. */
export function fastestReached(takes: readonly TakeRecord[]): Bpm | undefined {
  const tempos = takes.filter(reachesTempo).map((take) => take.bpm);
  return tempos.length === 0 ? undefined : Math.max(...tempos);
}

/**
 * The fastest tempo at which a target was reached; undefined if none was. One who plays the whole song
 * clean plays its sections so.
 */
export function cleanBpm(history: readonly TakeRecord[], target: PracticeTarget): Bpm | undefined {
  return fastestReached(
    history.filter(
      (take) =>
        sameTarget(take.target, target) ||
        (target.kind === 'section' && take.target.kind === 'song'),
    ),
  );
}
