import { wishBeside } from '../../app/drillCourse.ts';
import { type Parts, useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import type { ShownDrill } from '../parts/transport/useDrill.ts';
import { goToRungBeside } from './goToRung.ts';
import { stageWords } from './stageWords.ts';

const WORDS = { '1': ['Rung up', 'Next stage'], '-1': ['Rung down', 'Stage before'] } as const;

/** A step up or down; at the ladder's ends it leads to another stage, if there is one, and says so. */
function StepButton({ drill, by }: { readonly drill: ShownDrill; readonly by: 1 | -1 }) {
  const parts: Parts = useParts();
  const project = useProject((whole) => whole);
  const now = drill.wanted ?? { rung: drill.here, ...(drill.stage && { stage: drill.stage }) };
  const beside = wishBeside(project, now, by);
  const leavesStage = beside.stage?.id !== now.stage?.id;
  const [rung, stage] = WORDS[by];
  return (
    <button
      type="button"
      className="practice-step"
      disabled={!leavesStage && beside.rung === now.rung}
      onClick={() => goToRungBeside(parts, by)}
    >
      {leavesStage ? stage : rung}
    </button>
  );
}

/** How far a rung is nudged, and for how long, in words. */
function nudgeWords(nudgeBpm: number): string {
  return `${Math.abs(nudgeBpm)} ${nudgeBpm > 0 ? 'faster' : 'slower'}, on this rung only`;
}

/** What comes next, or what may: the rung or stage that was chosen, or on a top that was clean the stage after it; else how far the rung is nudged. */
function Coming({ drill }: { readonly drill: ShownDrill }) {
  const project = useProject((whole) => whole);
  const { wanted, stage, rungs, here, place } = drill;
  if (wanted && wanted.stage?.id !== stage?.id)
    return <>then {wanted.stage ? stageWords(wanted.stage, project) : 'one chord, as set'}</>;
  if (wanted)
    return (
      <>
        then rung {wanted.rung + 1}, {rungs[wanted.rung]?.bpm}
      </>
    );
  if (place?.nudgeBpm !== undefined) return <>{nudgeWords(place.nudgeBpm)}</>;
  if (!place?.isDone) return null;
  const after = wishBeside(project, { rung: here, ...(stage && { stage }) }, 1).stage;
  const isOver = after === undefined || after.id === stage?.id;
  return (
    <>
      Clean at {rungs[here]?.bpm}.{isOver ? '' : ` Next: ${stageWords(after, project)}`}
    </>
  );
}

/** A rung up and down, and what comes of it. */
export function RungButtons({ drill }: { readonly drill: ShownDrill }) {
  return (
    <>
      <StepButton drill={drill} by={-1} />
      <StepButton drill={drill} by={1} />
      <p className="practice-wanted" role="status">
        <Coming drill={drill} />
      </p>
    </>
  );
}
