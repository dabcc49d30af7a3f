import { useMemo } from 'react';
import { type PlanItem, planFor } from '../../../core/practice/plan.ts';
import { useProject, useView } from '../tool/useProject.ts';
import { useTakeHistory } from '../tool/useTakeHistory.ts';
import { selectSongToPractise } from './songToPractise.ts';

/** The lines of the plan for the minutes that are set; what was played since it was begun does not change it. */
export function usePlanItems(): readonly PlanItem[] {
  const { minutes, begunAtMs } = useView((state) => state.plan);
  const song = useProject(selectSongToPractise);
  const history = useTakeHistory();
  return useMemo(() => {
    const known = history.filter(({ atMs }) => begunAtMs === undefined || atMs < begunAtMs);
    return song.ok ? planFor(minutes, song.value, known) : [];
  }, [history, begunAtMs, song, minutes]);
}
