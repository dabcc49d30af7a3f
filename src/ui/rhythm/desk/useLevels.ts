import { useDeferredValue, useMemo } from 'react';
import { type PatternLoad, patternLoad } from '../../../app/patternLoad.ts';
import type { ScoreProblem } from '../../../app/score.ts';
import type { Result } from '../../../core/result.ts';
import type { HandLimits } from '../../../core/rhythm/handLimits.ts';
import type { Level } from '../../../core/rhythm/levels.ts';
import type { Hit, Pattern } from '../../../core/rhythm/pattern.ts';
import { withoutEnding } from '../../../core/rhythm/patternMoves.ts';
import { thinnedPattern } from '../../../core/rhythm/thinnedPattern.ts';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import { type HitRemark, type HitRemarks, NO_MARKS } from '../../parts/grid/hitMarks.ts';
import { useHandLimits } from '../../parts/pattern/useHandLimits.ts';
import { useHeardTempo } from '../../parts/pattern/useHeardTempo.ts';
import { useProject } from '../../parts/tool/useProject.ts';

/** A pattern at a level (all of it where none is chosen), what it asks of the hands, and the remarks on its hits. */
export type LevelChoice = {
  readonly level: Level | undefined;
  readonly bpm: Bpm;
  /** What the player's hands can do. */
  readonly limits: HandLimits;
  /** What is left to play. */
  readonly thinned: Pattern;
  readonly load: Result<PatternLoad, ScoreProblem>;
  readonly marks: HitRemarks;
};

function remarksOf(
  all: readonly Hit[],
  kept: readonly Hit[],
  tooMuch: readonly Ticks[],
): ReadonlyMap<Ticks, HitRemark> {
  const left = all.filter((hit) => !kept.some(({ at }) => at === hit.at));
  return new Map([
    ...left.map(({ at }) => [at, 'left out'] as const),
    ...tooMuch.map((at) => [at, 'too much'] as const),
  ]);
}

/** The remarks on a pattern's hits when only `thinned` of it is played under a load. */
export function levelMarks(
  pattern: Pattern,
  thinned: Pattern,
  load: Result<PatternLoad, unknown>,
): HitRemarks {
  const marks = (hand: HandName) =>
    remarksOf(
      pattern[hand],
      thinned[hand],
      load.ok ? load.value[hand].strains.map(({ at }) => at) : [],
    );
  return { left: marks('left'), right: marks('right') };
}

/**
 * See `LevelChoice`, of what is shown of a pattern; nothing is computed where the levels are not looked at,
 * and where they are, an edit is drawn on the spine first.
 */
export function useLevels(
  edited: Pattern,
  level: Level | undefined,
  areOpen: boolean,
): LevelChoice | undefined {
  const bpm = useHeardTempo();
  const limits = useHandLimits();
  const project = useDeferredValue(useProject((whole) => (areOpen ? whole : undefined)));
  const shown = useDeferredValue(edited);
  return useMemo(() => {
    if (!project) return undefined;
    const main = withoutEnding(shown);
    const thinned = level === undefined ? main : thinnedPattern(main, level, bpm, limits);
    const load = patternLoad(project, thinned, bpm, limits);
    return { level, bpm, limits, thinned, load, marks: levelMarks(shown, thinned, load) };
  }, [shown, level, bpm, limits, project]);
}

/** The marks to draw; none where the levels are not looked at. */
export function hitRemarksOf(levels: LevelChoice | undefined): HitRemarks {
  return levels?.marks ?? NO_MARKS;
}
