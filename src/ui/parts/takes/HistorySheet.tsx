import './takes.css';
import './history.css';
import { useMemo, useState } from 'react';
import { takesFile } from '../../../app/takesFile.ts';
import { practiceDays, targetsOf } from '../../../core/practice/practiceDays.ts';
import { type PracticeTarget, sameTarget } from '../../../core/practice/takeRecord.ts';
import { SheetDialog } from '../../kit/SheetDialog.tsx';
import { saveFile } from '../../kit/saveFile.ts';
import { targetWords } from '../plan/planWords.ts';
import { useParts } from '../tool/parts.ts';
import { useProject } from '../tool/useProject.ts';
import { useTakeHistoryState } from '../tool/useTakeHistory.ts';
import { HistoryPlots } from './HistoryPlots.tsx';
import { aheadOfUtcMinutes, localDay, notKeptSentence } from './historyWords.ts';
import { RemoveAll } from './RemoveAll.tsx';
import { TakeList } from './TakeList.tsx';

/** What is looked at: a target, or everything. */
type Looked = PracticeTarget | 'everything';

/** Names of what was practised; what is not in the song any more is said to be gone. */
function useTargetNames(): (target: PracticeTarget) => string {
  const named = useProject((project) => project);
  return (target) => {
    const words = targetWords(target, named).trim();
    const isGone = words === '' || words === 'to' || words.startsWith('“”');
    return isGone ? `A ${target.kind} that is gone` : words;
  };
}

function Choice({
  targets,
  looked,
  onChange,
}: {
  readonly targets: readonly PracticeTarget[];
  readonly looked: Looked;
  readonly onChange: (looked: Looked) => void;
}) {
  const nameOf = useTargetNames();
  const place =
    looked === 'everything' ? -1 : targets.findIndex((target) => sameTarget(target, looked));
  return (
    <label className="practice-choice">
      <span>Of</span>
      <select
        value={place}
        onChange={(event) => onChange(targets[Number(event.target.value)] ?? 'everything')}
      >
        {targets.map((target, i) => (
          <option key={JSON.stringify(target)} value={i}>
            {nameOf(target)}
          </option>
        ))}
        <option value={-1}>everything</option>
      </select>
    </label>
  );
}

function SaveTable() {
  const { store, takeHistory } = useParts();
  const nameOf = useTargetNames();
  const save = () => {
    const { name, text } = takesFile(takeHistory.state().takes, {
      song: store.snapshot().song.title,
      nameOf,
      aheadOfUtcMinutes,
    });
    saveFile(name, text);
  };
  return (
    <button type="button" onClick={save}>
      Save as a table (CSV)
    </button>
  );
}

/** What was played of this song: over days as plots, and take by take. */
export function HistorySheet({ onClose }: { readonly onClose: () => void }) {
  const { takeHistory } = useParts();
  const { takes, crossedOut, problem } = useTakeHistoryState();
  const goal = useProject((project) => project.song.tempo.bpm);
  const nameOf = useTargetNames();
  const targets = useMemo(() => targetsOf([...takes, ...crossedOut]), [takes, crossedOut]);
  const [chosen, setChosen] = useState<Looked>();
  const looked = chosen ?? targets[0] ?? 'everything';
  const isLooked = ({ target }: { readonly target: PracticeTarget }) =>
    looked === 'everything' || sameTarget(target, looked);
  const [mine, gone] = [takes.filter(isLooked), crossedOut.filter(isLooked)];
  const close = () => {
    void takeHistory.deleteCrossedOut();
    onClose();
  };
  return (
    <SheetDialog title="What I played" onClose={close}>
      {problem && <p className="practice-problem">{notKeptSentence(problem)}</p>}
      {targets.length === 0 ? (
        <p>
          Nothing yet. Choose on Drill what hears you, then play: a drill, a section, the song.
          {!problem && ' Every take is kept here, on this device only.'}
        </p>
      ) : (
        <div className="takes-history">
          <div className="row">
            <Choice targets={targets} looked={looked} onChange={setChosen} />
            <SaveTable />
            <RemoveAll
              key={JSON.stringify(looked)}
              takes={mine}
              crossedOut={gone}
              what={looked === 'everything' ? 'this song' : nameOf(looked)}
            />
          </div>
          {looked !== 'everything' && (
            <HistoryPlots days={practiceDays(mine, localDay)} goal={goal} />
          )}
          <TakeList
            key={JSON.stringify(looked)}
            takes={mine}
            crossedOut={gone}
            nameOf={(target) => (looked === 'everything' ? nameOf(target) : '')}
          />
        </div>
      )}
    </SheetDialog>
  );
}
