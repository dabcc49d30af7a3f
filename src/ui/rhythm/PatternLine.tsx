import type { Pattern } from '../../core/rhythm/pattern.ts';
import { formatMeter } from '../../core/time/meter.ts';
import { PATTERN_BARS, setPatternBars, setPatternMeter } from '../../state/edits/pattern.ts';
import { NotesToggle } from '../parts/notation/NotesToggle.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { meterWritten, offeredMeters } from './meters.ts';
import { PatternChooser } from './PatternChooser.tsx';
import { PedalToggle } from './PedalToggle.tsx';
import { SwingField } from './SwingField.tsx';

type Props = { readonly pattern: Pattern; readonly onBringBand: () => void };

function Bars({ pattern }: { readonly pattern: Pattern }) {
  const { store } = useParts();
  return (
    <div role="group" aria-label="Bars" className="pattern-buttons">
      <span className="pattern-caption" aria-hidden="true">
        Bars
      </span>
      {PATTERN_BARS.map((bars) => (
        <button
          key={bars}
          type="button"
          aria-label={bars === 1 ? '1 bar' : `${bars} bars`}
          aria-pressed={pattern.bars === bars}
          onClick={() => store.edit(setPatternBars(pattern.id, bars), { label: 'bars' })}
        >
          {bars}
        </button>
      ))}
    </div>
  );
}

function MeterField({ pattern }: { readonly pattern: Pattern }) {
  const { store } = useParts();
  return (
    <select
      aria-label="Meter"
      value={formatMeter(pattern.meter)}
      onChange={(event) =>
        store.edit(setPatternMeter(pattern.id, meterWritten(event.target.value)), {
          label: 'meter of the pattern',
        })
      }
    >
      {offeredMeters(pattern.meter).map((meter) => (
        <option key={meter}>{meter}</option>
      ))}
    </select>
  );
}

/** First line of the page: which pattern, how many bars of which meter, its swing and pedal. */
export function PatternLine({ pattern, onBringBand }: Props) {
  return (
    <div className="pattern-head">
      <PatternChooser shown={pattern} onBringBand={onBringBand} />
      <Bars pattern={pattern} />
      <MeterField pattern={pattern} />
      <SwingField pattern={pattern} />
      <PedalToggle pattern={pattern} />
      <NotesToggle page="rhythm" />
    </div>
  );
}
