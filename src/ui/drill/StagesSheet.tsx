import '../parts/plan/sheets.css';
import { useState } from 'react';
import type { Stage } from '../../core/practice/stage.ts';
import { withAdded, withChanged, withMoved, without } from '../../core/practice/stageList.ts';
import { setStages } from '../../state/edits/practice.ts';
import { stageList } from '../../state/stages.ts';
import { SheetDialog } from '../kit/SheetDialog.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { StageFields } from './StageFields.tsx';
import { stageWords } from './stageWords.ts';

type ChangeList = (stages: readonly Stage[]) => readonly Stage[];

/** One stage to be changed, moved and removed. */
function StageItem({
  stage,
  place,
  isLast,
  onChange,
}: {
  readonly stage: Stage;
  readonly place: number;
  readonly isLast: boolean;
  readonly onChange: (how: ChangeList, gesture?: string) => void;
}) {
  const sections = useProject((project) => project.song.sections);
  const name = `stage ${place + 1}, ${stageWords(stage, { song: { sections } })}`;
  return (
    <li>
      <b>{place + 1}</b>
      <StageFields
        stage={stage}
        place={place}
        onChange={(next) => onChange((stages) => withChanged(stages, next), `stage ${stage.id}`)}
      />
      <span className="practice-stage-moves">
        <button
          type="button"
          aria-label={`Earlier: ${name}`}
          disabled={place === 0}
          onClick={() => onChange((stages) => withMoved(stages, place, -1))}
        >
          ↑
        </button>
        <button
          type="button"
          aria-label={`Later: ${name}`}
          disabled={isLast}
          onClick={() => onChange((stages) => withMoved(stages, place, 1))}
        >
          ↓
        </button>
        <button
          type="button"
          aria-label={`Remove ${name}`}
          onClick={() => onChange((stages) => without(stages, stage.id))}
        >
          ×
        </button>
      </span>
    </li>
  );
}

/** The stages as a list to be arranged; what is changed becomes the song's own list. */
function StagesSheet({ onClose }: { readonly onClose: () => void }) {
  const { store } = useParts();
  const stages = useProject(stageList);
  const isOwn = useProject((project) => project.practice.drill.stages !== undefined);
  const change = (how: ChangeList, gesture?: string) =>
    store.edit((project) => setStages(how(stageList(project)))(project), {
      label: 'stages',
      ...(gesture && { gesture }),
    });
  return (
    <SheetDialog title="Stages" onClose={onClose}>
      <p className="practice-advice">
        {isOwn ? 'Your own way' : 'A proposal'} from one chord into the song, to change, skip and
        reorder as you like. Hands apart first, slow first, slow and fast in turn: no way of
        practising is proven best.
      </p>
      <ol className="practice-list practice-stage-list">
        {stages.map((stage, i) => (
          <StageItem
            key={stage.id}
            stage={stage}
            place={i}
            isLast={i === stages.length - 1}
            onChange={change}
          />
        ))}
      </ol>
      <div className="row practice-stage-acts">
        <button
          type="button"
          onClick={() =>
            change((list) => withAdded(list, { passage: { kind: 'one-chord' }, tool: 'none' }))
          }
        >
          Add a stage
        </button>
        <button
          type="button"
          disabled={!isOwn}
          onClick={() => store.edit(setStages(undefined), { label: 'stages as proposed' })}
        >
          Back to the proposal
        </button>
      </div>
    </SheetDialog>
  );
}

/** Opens the list of stages. */
export function StagesButton() {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" onClick={() => setOpen(true)}>
        Stages …
      </button>
      {isOpen && <StagesSheet onClose={() => setOpen(false)} />}
    </>
  );
}
