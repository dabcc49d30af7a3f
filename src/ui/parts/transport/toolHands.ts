import { type DrillWish } from '../../../app/drillCourse.ts';
import { stageNow } from '../../../app/stageScore.ts';
import type { SoundingHands } from '../../../core/practice/soundingHands.ts';
import type { Stage } from '../../../core/practice/stage.ts';
import { withChanged } from '../../../core/practice/stageList.ts';
import { setDrillHands, setSoundingHands, setStages } from '../../../state/edits/practice.ts';
import { stageList } from '../../../state/stages.ts';
import { type Parts, useParts } from '../tool/parts.ts';
import { usePlayback, useProject, useView } from '../tool/useProject.ts';

/** Which hands the tool sounds now, or will on this page, and how to change that. */
export type ToolHands = {
  readonly hands: SoundingHands;
  readonly setHands: (hands: SoundingHands) => void;
};

/** Whether a drill plays, or would be played on this page. */
function useIsDrill(): boolean {
  const playing = usePlayback();
  const isOnDrill = useView((state) => state.page === 'drill');
  return playing.status === 'stopped' ? isOnDrill : playing.request.kind === 'drill';
}

/** The stage that plays, or that Drill would play. */
function useStage(): Stage | undefined {
  const playing = usePlayback();
  const isOnDrill = useView((state) => state.page === 'drill');
  const chosen = useView((state) => state.stage);
  const request = playing.status === 'stopped' ? undefined : playing.request;
  const atRest: DrillWish['stage'] = isOnDrill ? chosen : undefined;
  const stage = request ? (request.kind === 'drill' ? request.stage : undefined) : atRest;
  return useProject((project) => stageNow(project, stage));
}

/**
 * Has the tool sound other hands: at a stage that says which for that stage, in a drill for the drill, else for the
 * song and its patterns.
 */
function changeHands(
  { store }: Parts,
  stage: Stage | undefined,
  isDrill: boolean,
  hands: SoundingHands,
): void {
  if (stage?.tool === undefined) {
    const edit = isDrill ? setDrillHands(hands) : setSoundingHands(hands);
    store.edit(edit, { label: 'hands that sound' });
    return;
  }
  const changed = { ...stage, tool: hands };
  store.edit((project) => setStages(withChanged(stageList(project), changed))(project), {
    label: 'hands of a stage',
  });
}

/** See `ToolHands`. */
export function useToolHands(): ToolHands {
  const parts = useParts();
  const stage = useStage();
  const isDrill = useIsDrill();
  const set = useProject(
    ({ practice }) => (isDrill ? practice.drill.hands : undefined) ?? practice.hands,
  );
  return {
    hands: stage?.tool ?? set,
    setHands: (hands) => changeHands(parts, stage, isDrill, hands),
  };
}

/** Which hands sound after one of them was switched. */
export function switched(hands: SoundingHands, hand: 'left' | 'right'): SoundingHands {
  const left = (hands === 'left' || hands === 'both') !== (hand === 'left');
  const right = (hands === 'right' || hands === 'both') !== (hand === 'right');
  if (left && right) return 'both';
  if (left) return 'left';
  return right ? 'right' : 'none';
}
