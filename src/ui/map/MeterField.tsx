import { useState } from 'react';
import { formatMeter, type Meter, parseMeter, sameMeter } from '../../core/time/meter.ts';
import { meterSentence } from '../parts/chart/chartMessages.ts';

/** A meter as typed; read on leaving or Enter. What can't be read stays with a sentence, the meter as it was. */
export function MeterField({
  meter,
  onMeter,
}: {
  readonly meter: Meter;
  readonly onMeter: (meter: Meter) => void;
}) {
  const [typed, setTyped] = useState<string>();
  const [problem, setProblem] = useState<string>();
  const read = () => {
    if (typed === undefined) return;
    const next = parseMeter(typed);
    setProblem(next.ok ? undefined : meterSentence(next.error));
    if (!next.ok) return;
    setTyped(undefined);
    if (!sameMeter(next.value, meter)) onMeter(next.value);
  };
  return (
    <label className="field songmap-meter">
      <span>Meter</span>
      <input
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={typed ?? formatMeter(meter)}
        aria-invalid={problem !== undefined}
        aria-describedby="songmap-meter-problem"
        onChange={(event) => setTyped(event.target.value)}
        onBlur={read}
        onKeyDown={(event) => {
          if (event.key === 'Enter') read();
          if (event.key === 'Escape') {
            setTyped(undefined);
            setProblem(undefined);
          }
        }}
      />
      <span id="songmap-meter-problem" role="status">
        {problem !== undefined && <span className="chart-problem">{problem}</span>}
      </span>
    </label>
  );
}
