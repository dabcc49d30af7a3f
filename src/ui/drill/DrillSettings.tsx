import { drillPattern } from '../../app/score.ts';
import type { LadderStep, TempoLadder } from '../../core/practice/tempoLadder.ts';
import { BPM_RANGE, type Bpm } from '../../core/time/tempoMap.ts';
import {
  LONGEST_PRACTICE,
  setBarsPerPass,
  setCountInAt,
  setDrillPattern,
  setLadder,
} from '../../state/edits/practice.ts';
import { NumberField } from '../kit/NumberField.tsx';
import { ChordField } from '../parts/chart/ChordField.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { TapTempo } from '../parts/transport/TapTempo.tsx';
import { ClimbFields } from './ClimbFields.tsx';

/** The three kinds of step, each of about the same size to begin with. */
const STEPS: Readonly<
  Record<LadderStep['kind'], { readonly words: string; readonly step: LadderStep }>
> = {
  bpm: { words: 'beats a minute', step: { kind: 'bpm', bpm: 4 } },
  percent: { words: 'per cent', step: { kind: 'percent', percent: 5 } },
  marks: { words: 'metronome marks', step: { kind: 'marks' } },
};

function StepSize({
  step,
  onChange,
}: {
  readonly step: LadderStep;
  readonly onChange: (step: LadderStep) => void;
}) {
  if (step.kind === 'marks') return null;
  return (
    <NumberField
      label="Step"
      value={step.kind === 'bpm' ? step.bpm : step.percent}
      lowest={1}
      highest={step.kind === 'bpm' ? 40 : 50}
      onChange={(next) =>
        onChange(
          step.kind === 'bpm' ? { kind: 'bpm', bpm: next } : { kind: 'percent', percent: next },
        )
      }
    />
  );
}

function StepFields({
  step,
  onChange,
}: {
  readonly step: LadderStep;
  readonly onChange: (step: LadderStep) => void;
}) {
  return (
    <>
      <StepSize step={step} onChange={onChange} />
      <label className="practice-choice">
        <span>Step in</span>
        <select
          value={step.kind}
          onChange={(event) => onChange(STEPS[event.target.value as LadderStep['kind']].step)}
        >
          {Object.values(STEPS).map(({ words, step: { kind } }) => (
            <option key={kind} value={kind}>
              {words}
            </option>
          ))}
        </select>
      </label>
    </>
  );
}

/** An end of the ladder: typed, counted up and down, or tapped. */
function EndField({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: Bpm;
  readonly onChange: (bpm: Bpm) => void;
}) {
  return (
    <div className="practice-tapped">
      <NumberField
        label={label}
        value={value}
        lowest={BPM_RANGE.lowest}
        highest={BPM_RANGE.highest}
        onChange={onChange}
      />
      <TapTempo name={`Tap the tempo: ${label}`} onTempo={onChange} />
    </div>
  );
}

/** What is not as one may expect of a ladder, in words; empty where it climbs. */
function ladderWords({ startBpm, goalBpm }: TempoLadder): string {
  if (startBpm < goalBpm) return '';
  const isAbove = startBpm > goalBpm;
  return `${isAbove ? `From is above To, so there` : 'There'} is one tempo only: ${goalBpm}.`;
}

/** How the tempo climbs. */
export function LadderFields() {
  const { store } = useParts();
  const ladder = useProject((project) => project.practice.drill.ladder);
  const change = (parts: Parameters<typeof setLadder>[0]) =>
    store.edit(setLadder(parts), {
      label: 'tempo ladder',
      gesture: `ladder ${Object.keys(parts).join()}`,
    });
  return (
    <fieldset className="practice-fields practice-ladder-fields">
      <legend>Tempo ladder</legend>
      <EndField
        label="From"
        value={ladder.startBpm}
        onChange={(startBpm) => change({ startBpm })}
      />
      <EndField label="To" value={ladder.goalBpm} onChange={(goalBpm) => change({ goalBpm })} />
      <p className="practice-problem" role="status">
        {ladderWords(ladder)}
      </p>
      <StepFields step={ladder.step} onChange={(step) => change({ step })} />
      <ClimbFields ladder={ladder} onChange={change} />
      <CountInAt />
    </fieldset>
  );
}

function CountInAt() {
  const { store } = useParts();
  const countInAt = useProject((project) => project.practice.drill.countInAt);
  return (
    <label className="practice-choice">
      <span>Count in</span>
      <select
        value={countInAt}
        onChange={(event) =>
          store.edit(setCountInAt(event.target.value === 'start' ? 'start' : 'every-rung'), {
            label: 'count-in',
          })
        }
      >
        <option value="start">at the start only</option>
        <option value="every-rung">again at each new rung</option>
      </select>
    </label>
  );
}

/** What is drilled: the held chord, the pattern over it, and how many bars. */
export function DrilledFields() {
  const { store } = useParts();
  const drill = useProject((project) => project.practice.drill);
  const patterns = useProject((project) => project.patterns);
  const pattern = useProject(drillPattern);
  return (
    <fieldset className="practice-fields">
      <legend>One chord</legend>
      <ChordField />
      <label className="practice-choice">
        <span>Pattern</span>
        <select
          value={pattern?.id}
          onChange={(event) =>
            store.edit(setDrillPattern(event.target.value), { label: 'pattern of the drill' })
          }
        >
          {patterns.map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
        </select>
      </label>
      <NumberField
        label="Bars in a pass"
        value={drill.barsPerPass}
        lowest={1}
        highest={LONGEST_PRACTICE.barsPerPass}
        onChange={(bars) =>
          store.edit(setBarsPerPass(bars), { label: 'bars in a pass', gesture: 'bars in a pass' })
        }
      />
    </fieldset>
  );
}
