import { useMemo, useState } from 'react';
import { drillPattern, isOnChords } from '../../app/score.ts';
import { barsOfPassage, type Stage } from '../../core/practice/stage.ts';
import type { Project } from '../../core/project.ts';
import type { Level } from '../../core/rhythm/levels.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import { AS_WRITTEN, arrangedProject } from '../../state/arrangement.ts';
import { selectPatternAt, selectTimeline } from '../../state/selectors.ts';
import { useFrame } from '../kit/useFrame.ts';
import { useParts } from '../parts/tool/parts.ts';
import { usePlayback, useProject } from '../parts/tool/useProject.ts';

/**
 * The pattern of a stage in the bar of the song that is heard: the last one that was played by then,
 * as a figure is read on where the hands rest. On chords, the pattern of the drill.
 */
export function patternOfStage(
  project: Project,
  stage: Stage | undefined,
  heardBar: number | undefined,
): Pattern | undefined {
  const drilled = drillPattern(project);
  const timeline = selectTimeline(project);
  const bars = stage && barsOfPassage(timeline, stage.passage);
  if (!bars) return drilled;
  const patternAt = selectPatternAt(project);
  const played = timeline.bars
    .slice(bars.firstBar, bars.endBar)
    .map((bar, i) => patternAt(bar, bars.firstBar + i));
  const here = Math.max((heardBar ?? bars.firstBar) - bars.firstBar, 0);
  const isPlayed = (pattern: Pattern | undefined) => pattern !== undefined;
  return played.slice(0, here + 1).findLast(isPlayed) ?? played.find(isPlayed) ?? drilled;
}

/** The bar of the song in which a drill is, drawn anew when it is another; undefined while none is heard. */
function useHeardBar(): number | undefined {
  const { playback } = useParts();
  const playing = usePlayback();
  const [bar, setBar] = useState<number>();
  const isDrill =
    playing.status === 'playing' &&
    playing.request.kind === 'drill' &&
    !isOnChords(playing.request);
  useFrame(isDrill, () => setBar(isDrill ? playback.position()?.bar : undefined));
  return bar;
}

/**
 * The pattern that a stage is drilled with, at a level, hands alone: the one of the bar that is heard, or,
 * at rest, of the first; undefined where the project has none.
 */
export function useDrilledPattern(
  stage: Stage | undefined,
  level: Level | undefined,
): Pattern | undefined {
  const project = useProject((whole) => whole);
  const heardBar = useHeardBar();
  return useMemo(() => {
    const played = arrangedProject(project, {
      ...AS_WRITTEN,
      ...(level !== undefined && { level }),
    });
    const pattern = patternOfStage(played, stage, heardBar);
    return pattern && { ...pattern, sources: [] };
  }, [project, stage, level, heardBar]);
}
