import type { TempoLadder } from '../../core/practice/tempoLadder.ts';
import type { setLadder } from '../../state/edits/practice.ts';
import { useInput } from '../takes/useHearing.ts';

/** After how many rungs in a row that were not clean the ladder leads one down; 0 for never. */
const FALLS: readonly { readonly after: number; readonly words: string }[] = [
  { after: 0, words: 'never' },
  { after: 1, words: 'once it was not clean' },
  { after: 2, words: 'after two not clean' },
  { after: 3, words: 'after three not clean' },
];

type Change = (parts: Parameters<typeof setLadder>[0]) => void;

function FallBack({ ladder, onChange }: Readonly<{ ladder: TempoLadder; onChange: Change }>) {
  const { fallBackAfter = 0 } = ladder;
  const isListed = FALLS.some(({ after }) => after === fallBackAfter);
  return (
    <label className="practice-choice">
      <span>Fall back</span>
      <select
        value={fallBackAfter}
        onChange={(event) => onChange({ fallBackAfter: Number(event.target.value) || undefined })}
      >
        {FALLS.map(({ after, words }) => (
          <option key={after} value={after}>
            {words}
          </option>
        ))}
        {!isListed && <option value={fallBackAfter}>after {fallBackAfter} not clean</option>}
      </select>
    </label>
  );
}

/** When the ladder leads up and when down, and in which order its tempos come. */
export function ClimbFields({
  ladder,
  onChange,
}: Readonly<{ ladder: TempoLadder; onChange: Change }>) {
  const isHeard = useInput() !== undefined;
  const needsHearing = ladder.climb === 'when-clean' && !isHeard;
  return (
    <>
      <label className="practice-choice">
        <span>Climb</span>
        <select
          value={ladder.climb}
          onChange={(event) => onChange({ climb: event.target.value as TempoLadder['climb'] })}
        >
          <option value="always">after these passes</option>
          <option value="when-clean">when they were clean</option>
          <option value="by-hand">when I say so (Page Down)</option>
        </select>
      </label>
      {needsHearing && (
        <p className="hint">It can’t tell yet: choose what hears you, under I play.</p>
      )}
      {ladder.climb !== 'by-hand' && <FallBack ladder={ladder} onChange={onChange} />}
      <label className="practice-choice">
        <span>Order</span>
        <select
          value={ladder.order ?? 'rising'}
          onChange={(event) =>
            onChange({ order: event.target.value === 'alternating' ? 'alternating' : undefined })
          }
        >
          <option value="rising">rung after rung</option>
          <option value="alternating">this rung and the goal in turn</option>
        </select>
      </label>
    </>
  );
}
