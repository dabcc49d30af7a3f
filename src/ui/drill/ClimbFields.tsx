import {
  CLIMB_ORDERS,
  type LevelClimb,
  type TempoLadder,
} from '../../core/practice/tempoLadder.ts';
import { LONGEST_PRACTICE, type setLadder } from '../../state/edits/practice.ts';
import { NumberField } from '../kit/NumberField.tsx';
import { useInput } from '../parts/takes/useHearing.ts';

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

const CLIMB_WORDS: Readonly<Record<TempoLadder['climb'], string>> = {
  always: 'after these passes',
  'when-clean': 'when they were clean',
  'by-hand': 'when I say so (Page Down)',
};

const ORDER_WORDS: Readonly<Record<LevelClimb['order'], string>> = {
  'levels-first': 'first, then the tempo',
  'levels-at-each-tempo': 'at each tempo',
  'tempos-at-each-level': 'after the whole ladder',
};

/** Levels that one may begin with: below the whole part. */
const FIRST_LEVELS = [1, 2, 3, 4] as const;

const LOWEST: LevelClimb = { from: 2, order: 'levels-first' };

/** Whether levels of the part climb as well, from which on and in which order. */
function LevelFields({ ladder, onChange }: Readonly<{ ladder: TempoLadder; onChange: Change }>) {
  const { levels } = ladder;
  return (
    <>
      <label className="practice-choice">
        <span>More notes</span>
        <select
          value={levels?.order ?? ''}
          onChange={(event) => {
            const order = CLIMB_ORDERS.find((each) => each === event.target.value);
            onChange({ levels: order && { ...(levels ?? LOWEST), order } });
          }}
        >
          <option value="">never: the tempo climbs</option>
          {CLIMB_ORDERS.map((order) => (
            <option key={order} value={order}>
              {ORDER_WORDS[order]}
            </option>
          ))}
        </select>
      </label>
      {levels && (
        <label className="practice-choice">
          <span>Begin with</span>
          <select
            value={levels.from}
            onChange={(event) => {
              const from = FIRST_LEVELS.find((each) => String(each) === event.target.value);
              if (from) onChange({ levels: { ...levels, from } });
            }}
          >
            {FIRST_LEVELS.map((level) => (
              <option key={level} value={level}>
                level {level}
              </option>
            ))}
          </select>
        </label>
      )}
    </>
  );
}

/** The passes of a rung and what follows them, in a few words. */
function climbSummary({ passesPerRung, climb }: TempoLadder): string {
  const passes = passesPerRung === 1 ? '1 pass' : `${passesPerRung} passes`;
  const words = { always: 'then up', 'when-clean': 'up when clean', 'by-hand': 'up by hand' };
  return `${passes}, ${words[climb]}`;
}

/** When the ladder leads up and when down, and in which order its tempos and levels come. */
export function ClimbFields({
  ladder,
  onChange,
}: Readonly<{ ladder: TempoLadder; onChange: Change }>) {
  const isHeard = useInput() !== undefined;
  const needsHearing = ladder.climb === 'when-clean' && !isHeard;
  return (
    <>
      <details className="practice-more">
        <summary>How it climbs: {climbSummary(ladder)}</summary>
        <NumberField
          label="Passes on a rung"
          value={ladder.passesPerRung}
          lowest={1}
          highest={LONGEST_PRACTICE.passesPerRung}
          onChange={(passesPerRung) => onChange({ passesPerRung })}
        />
        <label className="practice-choice">
          <span>Climb</span>
          <select
            value={ladder.climb}
            onChange={(event) => onChange({ climb: event.target.value as TempoLadder['climb'] })}
          >
            {Object.entries(CLIMB_WORDS).map(([climb, words]) => (
              <option key={climb} value={climb}>
                {words}
              </option>
            ))}
          </select>
        </label>
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
        <LevelFields ladder={ladder} onChange={onChange} />
      </details>
      {needsHearing && (
        <p className="hint">It can’t tell yet: choose what hears you, under I play.</p>
      )}
    </>
  );
}
