import './sheets.css';
import type { PlanItem } from '../../../core/practice/plan.ts';
import { NumberField } from '../../kit/NumberField.tsx';
import { SheetDialog } from '../../kit/SheetDialog.tsx';
import { useParts } from '../tool/parts.ts';
import { useProject, useView } from '../tool/useProject.ts';
import { NothingPlayableNote } from './NothingPlayableNote.tsx';
import { startLine } from './planLine.ts';
import { itemWords, reasonWords, tempoWords } from './planWords.ts';
import { selectSongToPractise } from './songToPractise.ts';
import { usePlanItems } from './usePlanItems.ts';

function PlanLine({
  item,
  standing,
  onStart,
}: {
  readonly item: PlanItem;
  readonly standing: 'done' | 'next' | 'later';
  readonly onStart: () => void;
}) {
  const named = useProject((project) => project);
  const title = itemWords(item, named);
  return (
    <li
      className={`practice-plan-${item.kind}`}
      aria-current={standing === 'next' ? 'step' : undefined}
    >
      <span className="practice-minutes">{item.minutes} min</span>
      <div>
        <h3>
          {title}
          {standing === 'done' && <small> begun</small>}
        </h3>
        {item.kind === 'drill' && (
          <p>
            {reasonWords(item.why)}; {tempoWords(item.startBpm, item.goalBpm)}
          </p>
        )}
      </div>
      <button type="button" aria-label={`Start: ${title}`} onClick={onStart}>
        Start
      </button>
    </li>
  );
}

function standingOf(index: number, next: number): 'done' | 'next' | 'later' {
  if (index === next) return 'next';
  return index < next ? 'done' : 'later';
}

/** The time there is, and what to practise in it in which order; every line starts with one tap. */
export function PlanSheet({ onClose }: { readonly onClose: () => void }) {
  const parts = useParts();
  const { view } = parts;
  const { minutes, next, begunAtMs } = useView((state) => state.plan);
  const song = useProject(selectSongToPractise);
  const items = usePlanItems();
  const start = (index: number) => {
    onClose();
    startLine(parts, items, index, Date.now());
  };
  return (
    <SheetDialog title="A plan for the time I have" onClose={onClose}>
      <NumberField
        label="Minutes"
        value={minutes}
        step={5}
        lowest={5}
        highest={120}
        onChange={(each) => view.set({ plan: { minutes: each, next: 0 } })}
      />
      {begunAtMs !== undefined && (
        <p>
          <button type="button" onClick={() => view.set({ plan: { minutes, next: 0 } })}>
            Plan anew, with what I played since
          </button>
        </p>
      )}
      {!song.ok && <NothingPlayableNote problem={song.error} />}
      {song.ok && items.length === 0 && (
        <p>The song has no bars yet: write its sections and their order on Map.</p>
      )}
      <ol className="practice-list">
        {items.map((item, i) => (
          <PlanLine key={i} item={item} standing={standingOf(i, next)} onStart={() => start(i)} />
        ))}
      </ol>
    </SheetDialog>
  );
}
