import { useMemo } from 'react';
import { drillPattern } from '../../app/score.ts';
import { barsOfPassage, type Stage } from '../../core/practice/stage.ts';
import type { Project } from '../../core/project.ts';
import type { Level } from '../../core/rhythm/levels.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import { AS_WRITTEN, arrangedProject } from '../../state/arrangement.ts';
import { selectPatternAt, selectTimeline } from '../../state/selectors.ts';
import { useProject } from '../useProject.ts';

/** The pattern of the drill where the stage's bars play it, else the last one that they play: of a join, the one that it leads into. */
function patternOfStage(project: Project, stage: Stage | undefined): Pattern | undefined {
  const drilled = drillPattern(project);
  const timeline = selectTimeline(project);
  const bars = stage && barsOfPassage(timeline, stage.passage);
  if (!bars) return drilled;
  const patternAt = selectPatternAt(project);
  const played = timeline.bars
    .slice(bars.firstBar, bars.endBar)
    .map((bar, i) => patternAt(bar, bars.firstBar + i));
  const isPlayed = stage.passage.kind === 'section' && played.includes(drilled);
  return isPlayed ? drilled : (played.findLast((pattern) => pattern !== undefined) ?? drilled);
}

/** The pattern that a stage is drilled with, at a level, hands alone; undefined where the project has none. */
export function useDrilledPattern(
  stage: Stage | undefined,
  level: Level | undefined,
): Pattern | undefined {
  const project = useProject((whole) => whole);
  return useMemo(() => {
    const played = arrangedProject(project, {
      ...AS_WRITTEN,
      ...(level !== undefined && { level }),
    });
    const pattern = patternOfStage(played, stage);
    return pattern && { ...pattern, sources: [] };
  }, [project, stage, level]);
}
