import type { Stage } from '../../core/practice/stage.ts';
import { selectStages } from '../../state/stages.ts';
import { PlanButton } from '../parts/plan/PlanButton.tsx';
import { HistoryButton } from '../parts/takes/HistoryButton.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import type { ShownDrill } from '../parts/transport/useDrill.ts';
import { goToStage } from './goToRung.ts';
import { StagesButton } from './StagesSheet.tsx';
import { stageWords } from './stageWords.ts';

/** What the drill is called that is no stage: on one chord, with everything as it is set. */
const AS_SET = 'As set';

function StageStep({
  mark,
  words,
  isHere,
  isWanted,
  onChoose,
}: {
  readonly mark: string;
  readonly words: string;
  readonly isHere: boolean;
  readonly isWanted: boolean;
  readonly onChoose: () => void;
}) {
  return (
    <li>
      <button
        type="button"
        className={`practice-stage${isWanted ? ' practice-stage-wanted' : ''}`}
        aria-current={isHere ? 'step' : undefined}
        title={words}
        onClick={onChoose}
      >
        {mark && (
          <b>
            <span className="visually-hidden">Stage </span>
            {mark}
          </b>
        )}
        <span className={isHere || !mark ? undefined : 'visually-hidden'}> {words}</span>
        {isWanted && <span className="visually-hidden">, next</span>}
      </button>
    </li>
  );
}

/** The way from one chord into the song, step by step; the one in use says what it is, a tap goes to another. */
export function StageLine({ drill: { stage, wanted } }: { readonly drill: ShownDrill }) {
  const parts = useParts();
  const stages = useProject(selectStages);
  const sections = useProject((project) => project.song.sections);
  const words = (each: Stage) => stageWords(each, { song: { sections } });
  const isListed = stage && stages.some(({ id }) => id === stage.id);
  const step = (each: Stage | undefined, mark: string) => (
    <StageStep
      key={each?.id ?? ''}
      mark={mark}
      words={each ? words(each) : AS_SET}
      isHere={stage?.id === each?.id}
      isWanted={wanted !== undefined && wanted.stage?.id === each?.id && stage?.id !== each?.id}
      onChoose={() => goToStage(parts, each)}
    />
  );
  return (
    <div className="practice-stages">
      <ol aria-label="Stages">
        {step(undefined, '')}
        {stages.map((each, i) => step(each, String(i + 1)))}
        {stage && !isListed && step(stage, '')}
      </ol>
      <div className="practice-stage-sheets">
        <StagesButton />
        <PlanButton />
        <HistoryButton />
      </div>
    </div>
  );
}
