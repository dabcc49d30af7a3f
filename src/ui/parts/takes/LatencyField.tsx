import type { InputKind } from '../../../app/takeInputs.ts';
import { CALIBRATION } from '../../../core/practice/calibration.ts';
import { NumberField } from '../../kit/NumberField.tsx';
import { hearingSentence } from '../input/inputWords.ts';
import { useParts } from '../tool/parts.ts';
import { useView } from '../tool/useProject.ts';
import { LATENCY_RANGE_MS } from '../tool/viewState.ts';
import { withLatency } from './latencies.ts';
import { useLatencyState } from './useHearing.ts';

/** How late an input's hits arrive on this device: measured by playing along, or set by hand. */
export function LatencyField({ kind }: { readonly kind: InputKind }) {
  const { view, latencyCheck } = useParts();
  const latencyMs = useView((state) => state.hearing.latencyMs[kind]);
  const state = useLatencyState();
  const isMeasuring = state.status === 'measuring';
  const problem = state.status === 'idle' ? state.problem : undefined;
  return (
    <>
      <NumberField
        label="Latency in ms"
        value={latencyMs ?? 0}
        lowest={LATENCY_RANGE_MS.lowest}
        highest={LATENCY_RANGE_MS.highest}
        step={5}
        onChange={(ms) => view.set(withLatency(view.snapshot(), kind, ms))}
      />
      <button
        type="button"
        onClick={() => (isMeasuring ? latencyCheck.cancel() : void latencyCheck.start(kind))}
      >
        {isMeasuring ? 'Stop measuring' : `Measure: play along for ${CALIBRATION.beats} beats`}
      </button>
      <p className="hint" role="status">
        {isMeasuring && 'A bar is counted in; then one hit on every click.'}
        {!isMeasuring && !problem && latencyMs === undefined && 'Not measured on this device yet.'}
        {problem && <span className="practice-problem">{hearingSentence(problem, kind)}</span>}
      </p>
    </>
  );
}
